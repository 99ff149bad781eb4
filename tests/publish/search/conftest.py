"""Sites with a search, from the disk and from a plain server of files."""

from __future__ import annotations

import functools
import threading
from collections.abc import Iterator
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest

from capture.shop import Shop
from publish import publish_shop
from tests.publish.library.sessions import shop_of_sessions


class Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Say nothing."""


@pytest.fixture(scope="package")
def searched(tmp_path_factory: pytest.TempPathFactory) -> Shop:
    """A published shop of several sessions."""
    shop = shop_of_sessions(tmp_path_factory.mktemp("searched"))
    publish_shop(shop)
    return shop


@pytest.fixture(scope="package")
def served(searched: Shop) -> Iterator[str]:
    """Address of the site on a server that knows nothing but files."""
    handler = functools.partial(Quiet, directory=str(searched.public))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        thread = threading.Thread(target=server.serve_forever)
        thread.start()
        yield f"http://127.0.0.1:{server.server_port}"
        server.shutdown()
        thread.join()


@pytest.fixture(params=["server", "disk"])
def site(request: pytest.FixtureRequest, searched: Shop, served: str) -> str:
    """The site's address, from the server and from the disk."""
    return served if request.param == "server" else Path(searched.public).as_uri()
