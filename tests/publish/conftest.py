"""The invented session as a page, as HTML and in a shop on disk."""

from __future__ import annotations

from pathlib import Path

import pytest

from capture.files import write_atomic
from capture.shop import Session, SessionSettings, Shop
from publish.context import SessionPage
from publish.page import make_page
from publish.render import Renderer
from tests.publish.likeness import short_film
from tests.publish.narration import transcript
from tests.publish.session import SHOP, record, source


@pytest.fixture(scope="session")
def page() -> SessionPage:
    return make_page(source(), SHOP)


@pytest.fixture(scope="session")
def html(page: SessionPage) -> str:
    return Renderer().session(page)


@pytest.fixture(scope="session")
def film(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A short film that Chromium plays."""
    return short_film(tmp_path_factory.mktemp("film") / "heron bridge #1.webm", seconds=30)


@pytest.fixture
def shop(tmp_path: Path, film: Path) -> Shop:
    """A shop with the invented session in it, its recording and a note."""
    made = Shop.open_or_create(tmp_path / "shop", SHOP)
    add_session(made, film)
    return made


def add_session(shop: Shop, film: Path | None = None, title: str = "The Heron: a lifting bridge") -> Session:
    facts = record().session
    settings = SessionSettings.model_validate(
        {
            "title": title,
            "subject": facts.subject or "",
            "date": facts.date,
            "recording": str(film) if film else "",
            "trade": facts.trade or "",
        }
    )
    session = shop.add_session(settings)
    write_atomic(session.record_file, record().to_json())
    write_atomic(session.transcript_file, transcript().to_json())
    return session
