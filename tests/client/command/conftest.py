"""A desk for each test."""

import pytest

from tests.client.command.desk import Desk


@pytest.fixture
def desk(tmp_path):
    """A folder to work in and a double of the service."""
    return Desk(tmp_path)
