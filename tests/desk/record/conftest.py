"""The capture page over a shop of its own, asked without a browser."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from capture.shop import Shop
from desk.app import make_app
from desk.record.bench import Bench
from desk.record.section import Prefilled, record_section
from desk.record.writing_up import WritingUp
from desk.work import Hearing
from tests.desk.app.conftest import KEY, OWN, PORT


@dataclass
class Disk:
    """A disk whose free room the test sets."""

    free: int = 10**12
    asked: list[Path] = field(default_factory=list)

    def __call__(self, folder: Path) -> int:
        self.asked.append(folder)
        return self.free


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    return Shop.open_or_create(tmp_path / "shop")


@pytest.fixture
def disk() -> Disk:
    return Disk()


@pytest.fixture
def bench(shop: Shop, disk: Disk) -> Iterator[Bench]:
    bench = Bench(shop, PORT, disk)
    yield bench
    bench.close()


@pytest.fixture
def stranger(bench: Bench) -> Iterator[TestClient]:
    """Somebody without the key."""
    writing_up = WritingUp(bench.shop.root, Hearing())
    section = record_section(bench, writing_up, Prefilled(subject="Lute"), "spokeshave record --port 8137")
    app = make_app([section], KEY, PORT)
    with TestClient(app, base_url=f"http://127.0.0.1:{PORT}", follow_redirects=False) as client:
        yield client
    writing_up.stop()


@pytest.fixture
def person(stranger: TestClient) -> TestClient:
    """Who came by the printed address, on a page of ours."""
    assert stranger.get(f"/?key={KEY}").status_code == 303
    stranger.headers.update(OWN)
    return stranger
