"""Writing that runs from right to left, put into the order in which its letters are set from left to right."""

import unicodedata

__all__ = ["in_visual_order"]

_MIRRORED = str.maketrans("()[]{}<>«»", ")(][}{><»«")


def in_visual_order(text: str) -> str:
    """Letters of one line from left to right, for a writer that sets them one after the other.

    Parameters
    ----------
    text : str
        In the order in which it is read, without characters that turn its direction.

    Returns
    -------
    str
        The same letters, accents behind the letters that bear them.

    Notes
    -----
    The rules of the Unicode bidirectional algorithm (UAX #9) for one line without embeddings: W4 to W7 in short,
    N1, N2, I1, I2, L2 and L4.
    """
    clusters: list[str] = []
    for letter in text:
        if clusters and unicodedata.category(letter) in {"Mn", "Me"}:
            clusters[-1] += letter
        else:
            clusters.append(letter)
    kinds = [_kind(cluster[0]) for cluster in clusters]
    if "R" not in kinds:
        return text
    base = 1 if next(kind for kind in kinds if kind in "LR") == "R" else 0
    levels = _levels(kinds, base)
    order = list(range(len(clusters)))
    for level in range(max(levels), 0, -1):
        start = 0
        while start < len(order):
            end = start
            while end < len(order) and levels[order[end]] >= level:
                end += 1
            if end > start:
                order[start:end] = reversed(order[start:end])
            start = max(end, start + 1)
    return "".join(clusters[i].translate(_MIRRORED) if levels[i] % 2 else clusters[i] for i in order)


def _kind(letter: str) -> str:
    """Direction of a letter: L, R, a number (E), or none of its own (N)."""
    direction = unicodedata.bidirectional(letter)
    if direction in {"R", "AL"}:
        return "R"
    if direction in {"EN", "AN"}:
        return "E"
    return "L" if direction == "L" else "N"


def _levels(kinds: list[str], base: int) -> list[int]:
    """Embedding level of every letter; odd ones run from right to left."""
    resolved = []
    strong = "R" if base else "L"
    for index, kind in enumerate(kinds):
        if kind in "LR":
            strong = kind
        # A separator between two digits belongs to their number.
        between = kind == "N" and 0 < index < len(kinds) - 1 and kinds[index - 1] == kinds[index + 1] == "E"
        number = kind == "E" or between
        resolved.append(("L" if strong == "L" else "E") if number else kind)
    levels = []
    for index, kind in enumerate(resolved):
        side = kind
        if kind == "N":
            before = next((k for k in reversed(resolved[:index]) if k != "N"), "R" if base else "L")
            after = next((k for k in resolved[index + 1 :] if k != "N"), "R" if base else "L")
            same = (before == "L") == (after == "L")
            side = ("L" if before == "L" else "R") if same else ("R" if base else "L")
        if side == "E":
            levels.append(2)
        elif side == "R":
            levels.append(1)
        else:
            levels.append(2 if base else 0)
    return levels
