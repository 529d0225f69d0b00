"""Each behaviour is asked of both clients."""

import pytest

from tests.client import service_double


@pytest.fixture(params=[service_double.ask_sync, service_double.ask_async], ids=["sync", "async"])
def ask(request):
    """Puts one question through a client: ``ask(double, "layout", scale=650, ...)``."""
    return request.param
