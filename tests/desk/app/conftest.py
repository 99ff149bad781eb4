"""A small section of its own, behind the same safety as every other."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.requests import Request
from starlette.responses import JSONResponse, PlainTextResponse, Response
from starlette.routing import Route
from starlette.testclient import TestClient

from capture.errors import ShopError
from desk.app import Section, make_app

KEY = "k" * 43
PORT = 8137
OWN = {"origin": f"http://127.0.0.1:{PORT}", "spokeshave-page": "1"}


def _read(_: Request) -> Response:
    return PlainTextResponse("inside")


async def _write(request: Request) -> Response:
    return JSONResponse({"bytes": len(await request.body())})


def _broken(_: Request) -> Response:
    raise ShopError(Path("shop"), "can't be read", "mend it")


@pytest.fixture
def section(tmp_path: Path) -> Section:
    (tmp_path / "vice.css").write_text("h1 { color: red }")
    (tmp_path / "secret.toml").write_text("hidden = true")
    routes = [
        Route("/", _read),
        Route("/write", _write, methods=["POST"]),
        Route("/broken", _broken),
        Route("/galley/page", _read),
    ]
    return Section(
        "vice", "Vice", routes, tmp_path, largest_body=1000, features=frozenset({"microphone"}),
        framed={"galley/": "shown beside the list"},
    )  # fmt: skip


@pytest.fixture
def stranger(section: Section) -> Iterator[TestClient]:
    """Somebody without the key."""
    app = make_app([section], KEY, PORT)
    with TestClient(app, base_url=f"http://127.0.0.1:{PORT}", follow_redirects=False) as client:
        yield client


@pytest.fixture
def person(stranger: TestClient) -> TestClient:
    """Who came by the printed address."""
    assert stranger.get(f"/?key={KEY}").status_code == 303
    return stranger
