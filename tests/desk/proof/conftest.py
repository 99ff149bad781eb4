"""The invented session in a shop, and who may look at it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext
from starlette.testclient import TestClient

from capture.files import write_atomic
from capture.shop import Session, SessionSettings, Shop
from desk.app import make_app
from desk.proof import proof_section
from extract.checks import run_checks
from extract.record import Heard, Reading, Record
from extract.trade import load_trade
from tests.desk.app.conftest import KEY, OWN, PORT
from tests.publish.likeness import short_film
from tests.publish.narration import transcript
from tests.publish.session import SHOP, record

TITLE = "The Heron: a lifting bridge"
SLUG = "2031-05-14-the-heron-a-lifting-bridge"


@pytest.fixture(scope="session")
def film(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return short_film(tmp_path_factory.mktemp("film") / "heron.webm", seconds=30)


def heron() -> Record:
    """The invented record, of a trade that has a file, with what the checks find in it and one near tie."""
    made = record()
    facts = made.session.model_copy(update={"trade": "strings"})
    measures = tuple(one.model_copy(update={"heard": _TIE}) if one.id == "m-slot-1" else one for one in made.measures)
    made = made.model_copy(update={"session": facts, "measures": measures})
    return made.model_copy(update={"findings": run_checks(made, load_trade("strings"))})


_TIE = Heard(
    confidence=0.52,
    near_tie=True,
    readings=(
        Reading(text="a hundred thousandths", value=0.1, unit="inch", score=0.0, first_heard=True),
        Reading(text="a hundred and ten thousandths", value=0.11, unit="inch", score=-0.3),
    ),
)


def _finding(measure: str) -> str:
    return next(one.id for one in heron().findings if measure in one.measures)


NUT, CLAMP, SCALE = _finding("m-nut-1"), _finding("m-clamp"), _finding("m-scale-1")
"""16 in is not 250 mm; clamped for 12, but 12 what; 20 7/8 in is not 550 mm."""
SLOT = _finding("m-slot-1")
"""0.1 in, or 0.11 in?"""


@pytest.fixture
def shop(tmp_path: Path, film: Path) -> Shop:
    made = Shop.open_or_create(tmp_path / "shop", SHOP)
    settings = {"title": TITLE, "subject": "octave mandola", "date": "2031-05-14", "recording": str(film)}
    kept = made.add_session(SessionSettings.model_validate(settings))
    write_atomic(kept.record_file, heron().to_json())
    write_atomic(kept.transcript_file, transcript().to_json())
    return made


@pytest.fixture
def session(shop: Shop) -> Session:
    return shop.sessions()[0]


@pytest.fixture
def person(shop: Shop) -> Iterator[TestClient]:
    """Who came by the printed address."""
    app = make_app([proof_section(shop)], KEY, PORT)
    with TestClient(app, base_url=f"http://127.0.0.1:{PORT}") as client:
        client.get(f"/?key={KEY}")
        yield client


class Asking:
    """Asks for rulings as the page does."""

    def __init__(self, person: TestClient) -> None:
        self.person = person
        self.home = f"/proof/sessions/{SLUG}/"
        self._number = 0

    def state(self) -> dict[str, Any]:
        told: dict[str, Any] = self.person.get(f"{self.home}state").json()
        return told

    def item(self, item: str, sheet: str = "queries") -> dict[str, Any]:
        found: dict[str, Any] = next(one for one in self.state()[sheet] if one["id"] == item)
        return found

    def new_id(self) -> str:
        self._number += 1
        return f"{self._number:032x}"

    def rule(self, act: str, item: str = "", **more: Any) -> dict[str, Any]:
        ruling = {"id": self.new_id(), "act": act, "item": item, **more}
        answer = self.person.post(f"{self.home}rulings", json={"rulings": [ruling]}, headers=OWN)
        result: dict[str, Any] = answer.json()["results"][0]
        return result


@pytest.fixture
def asking(person: TestClient) -> Asking:
    return Asking(person)


@pytest.fixture
def window(browser: Browser) -> Iterator[BrowserContext]:
    with browser.new_context(viewport={"width": 1280, "height": 900}) as made:
        yield made
