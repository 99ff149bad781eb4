"""What was marked at the bench stands on the proof page, with its clip."""

from __future__ import annotations

import pytest
from playwright.sync_api import BrowserContext, expect
from starlette.testclient import TestClient

from capture.recording.marks import NAME, Mark, keep_marks
from capture.shop import Session, Shop
from tests.desk.proof.conftest import SLUG
from tests.desk.proof.test_browser import opened

PAGE = f"/proof/sessions/{SLUG}/"


def test_marks_are_told_with_their_clock_and_note(person: TestClient, session: Session) -> None:
    assert "Marked at the bench" not in person.get(PAGE).text
    keep_marks(session.folder, (Mark(second=83.4, note="the <crack>"), Mark(second=5)))
    shown = person.get(PAGE).text
    assert shown.index("0:05") < shown.index("1:23")
    assert "the &lt;crack&gt;" in shown


def test_broken_marks_are_told_and_the_page_opens(person: TestClient, session: Session) -> None:
    (session.folder / NAME).write_text("no marks")
    answer = person.get(PAGE)
    assert answer.status_code == 200
    assert "is no list of marks" in answer.text


@pytest.mark.browser
def test_a_mark_plays_from_a_little_before_it(window: BrowserContext, shop: Shop, session: Session) -> None:
    keep_marks(session.folder, (Mark(second=12, note="the crack"),))
    with opened(window, shop) as page:
        page.get_by_role("button", name="Play 0:12").click()
        film = page.locator("#mark-frame video")
        expect(film).to_have_js_property("paused", value=False)
        page.wait_for_function("() => document.querySelector('#mark-frame video').currentTime > 6")
        assert film.evaluate("film => film.currentTime") < 12
