"""What all tests share: how hypothesis searches, and what a source must say."""

import os

import pytest
from hypothesis import settings

# A busy machine is no fault of the code. In CI the same examples are tried every time.
settings.register_profile("local", deadline=None)
settings.register_profile("ci", deadline=None, derandomize=True)
settings.load_profile("ci" if os.environ.get("CI") else "local")


def pytest_collection_modifyitems(items):
    """Refuse a source that names nothing."""
    for item in items:
        for mark in item.iter_markers("source"):
            if not (mark.args and all(isinstance(text, str) and text.strip() for text in mark.args)):
                message = f"{item.nodeid}: source(...) says where the number was published"
                raise pytest.UsageError(message)
