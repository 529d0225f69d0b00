"""Files that are there as a whole or not at all, whenever the process ends."""

import os
from pathlib import Path

__all__ = ["write_whole"]


def write_whole(path: Path, content: bytes) -> None:
    """Write a file under another name, bring it to the disk, and only then give it its own.

    Parameters
    ----------
    path : Path
        The file; one that has the name is replaced.
    content : bytes
        All that is to be in it.
    """
    fresh = path.with_name(f"{path.name}.new")
    with fresh.open("wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
    fresh.replace(path)
