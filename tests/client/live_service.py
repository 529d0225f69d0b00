"""A real service on a free loopback port, for as long as a test needs it."""

import contextlib
import threading
import time

import uvicorn

from scalewright.api.app import create_app


@contextlib.contextmanager
def live_service():
    """Serve the application from a thread of this process; gives its address."""
    server = uvicorn.Server(uvicorn.Config(create_app(), host="127.0.0.1", port=0, log_level="warning", ws="none"))
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    try:
        deadline = time.monotonic() + 10.0
        while not server.started and thread.is_alive() and time.monotonic() < deadline:
            time.sleep(0.005)
        assert server.started
        port = server.servers[0].sockets[0].getsockname()[1]
        yield f"http://127.0.0.1:{port}"
    finally:
        server.should_exit = True
        thread.join(10.0)
