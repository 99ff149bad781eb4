"""The page in a real browser: record, pause, mark, take a still, end, write up."""

from __future__ import annotations

import itertools
import json
from collections.abc import Iterator
from pathlib import Path

import av
import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, Playwright

from capture.recording import read_marks
from capture.recording.level import Level
from capture.shop import Shop
from tests.capture.making import Maker
from tests.desk.record.serving import Server, Window, serving, start, window

pytestmark = pytest.mark.browser


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    return Shop.open_or_create(tmp_path / "shop")


@pytest.fixture
def server(shop: Shop) -> Iterator[Server]:
    with serving(shop.root) as server:
        yield server


@pytest.fixture
def browser(playwright: Playwright, tmp_path: Path) -> Iterator[Window]:
    with window(playwright, tmp_path / "profile", Maker(tmp_path).speech()) as browser:
        yield browser


def wait(page: Page) -> None:
    page.wait_for_timeout(500)


def mark_one(page: Page) -> None:
    start(page)
    page.locator("body").press("m")


def end(page: Page) -> None:
    page.keyboard.press("e")
    page.click("#end-yes")
    page.wait_for_selector("#after:not([hidden])", timeout=20_000)


def test_a_film_with_a_pause_has_no_gap_and_keeps_marks_and_stills(shop: Shop, server: Server, browser: Window) -> None:
    page = browser.open(server.address)
    page.wait_for_selector("#start")
    page.select_option("#camera", index=1)
    page.wait_for_selector("#view:not([hidden])")
    start(page, "Saddle slot")
    page.wait_for_timeout(2500)
    page.locator("body").press("m")
    page.fill("#marks-list input", "the crack")
    page.keyboard.press("Tab")
    page.click("#pause")
    assert page.inner_text("#standing") == "Paused"
    stood = page.inner_text("#clock")
    page.wait_for_timeout(3000)
    assert page.inner_text("#clock") == stood, "the clock stands still"
    page.click("#resume")
    page.wait_for_timeout(2500)
    page.click("#still")
    page.wait_for_timeout(700)
    end(page)
    reached = int((page.text_content("#clock") or "").split(":")[1])
    (session,) = shop.sessions()
    assert session.recording_file is not None
    with av.open(str(session.recording_file)) as container:
        times = [float(one.pts * one.time_base) for one in container.demux(audio=0) if one.pts is not None]
        assert container.duration is not None
        assert container.duration / 1e6 == pytest.approx(reached + 0.5, abs=1), "the pause is not in it"
    assert max(after - before for before, after in itertools.pairwise(times)) < 0.3
    (mark,) = read_marks(session.folder)
    assert (mark.note, 2 < mark.second < 4) == ("the crack", True)
    (still,) = (session.folder / "stills").iterdir()
    with av.open(str(still)) as picture:
        assert next(picture.decode(video=0)).width >= 320
    assert browser.complaints == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 1280])
def test_the_page_is_open_to_everyone(
    scheme: str, width: int, server: Server, playwright: Playwright, tmp_path: Path
) -> None:
    with window(playwright, tmp_path / "other", Maker(tmp_path).speech(), scheme) as browser:
        page = browser.open(server.address)
        page.set_viewport_size({"width": width, "height": 800})
        page.wait_for_selector("#start")
        for act in (wait, mark_one, end):
            act(page)
            found = Axe().run(page, options={"rules": {"target-size": {"enabled": True}}})
            assert found.violations_count == 0, found.generate_report()
            assert page.evaluate("document.documentElement.scrollWidth") <= width
            for button in page.locator(".large:visible").all():
                box = button.bounding_box()
                assert box is not None
                assert box["height"] >= 64, "for a thumb with glue on it"


def test_the_page_judges_a_level_as_the_terminal_does(server: Server, browser: Window) -> None:
    page = browser.open(server.address)
    facts = json.loads(page.get_attribute("#record", "data-facts") or "")
    levels = [(-120, -120)] * 100 + [(-58, -47)] * 100 + [(-22, -9)] * 30 + [(-5, 0)] + [(-22, -9)] * 100
    ours = Level()
    wanted = [ours.hear(at / 10, *one) for at, one in enumerate(levels)]
    told = page.evaluate(
        """async ([bounds, levels]) => {
            const { Level } = await import("/record/assets/level.js");
            const level = new Level(bounds);
            return levels.map(([power, peak], at) => level.hear(at / 10, power, peak));
        }""",
        [facts["bounds"], levels],
    )
    assert told == wanted


@pytest.mark.model
def test_what_was_said_is_written_up(shop: Shop, server: Server, browser: Window) -> None:
    page = browser.open(server.address)
    page.wait_for_selector("#start")
    start(page)
    page.wait_for_timeout(9000)
    end(page)
    page.click("#write")
    page.wait_for_selector("#to-proof", timeout=180_000)
    (session,) = shop.sessions()
    transcript = session.transcript()
    assert transcript is not None
    said = " ".join(cue.text for cue in transcript.cues).lower()
    # The robot's "sharp" is heard as "shark" now and then, as its sound goes through the browser in real time.
    assert all(word in said for word in ("slot", "slowly", "chisel")), said
    page.click("#to-proof")
    page.wait_for_selector("#proof")
    assert page.inner_text("h1") == "Saddle slot"
