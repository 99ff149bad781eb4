"""Open to everyone: axe-core on every sheet, light and dark, desktop and phone; nothing scrolls sideways; hostile words
stay words."""

from __future__ import annotations

from typing import Literal

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

from capture.files import write_atomic
from capture.shop import Session, Shop
from tests.desk.proof.test_browser import press, visit
from tests.desk.serving import proofing
from tests.publish.hostile import HOSTILE, hostile_source

pytestmark = pytest.mark.browser

PHONE, DESK = (360, 740), (1280, 900)


def _all_sheets(page: Page) -> list[str]:
    """Every state of the page that a person meets, one after another."""
    return [
        "q",
        "a",
        "Escape",
        "n",
        "Escape",
        "d",
        "Escape",
        "s",
        "f",
        "ArrowDown",
        "a",
        "Escape",
        "o",
        "ArrowDown",
        "t",
        "Escape",
        "d",
        "Escape",
        "k",
        "ArrowDown",
        "i",
        "v",
        "?",
    ]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_every_sheet_is_open_to_everyone(
    browser: Browser, shop: Shop, scheme: Literal["light", "dark"], size: tuple[int, int]
) -> None:
    viewport = {"width": size[0], "height": size[1]}
    with (
        proofing(shop.root, "heron") as (_, address),
        browser.new_context(viewport=viewport, color_scheme=scheme) as window,  # type: ignore[arg-type]
    ):
        page = visit(window, address)
        for one in _all_sheets(page):
            press(page, one)
            page.wait_for_timeout(120)
            axe = Axe()
            if page.locator("iframe.galley").count():
                expect(page.frame_locator("iframe.galley").locator("h1")).to_be_visible()
            for framed in page.frames[1:]:
                framed.evaluate(axe.axe_script)  # axe looks into a frame only where it stands in it
                assert framed.evaluate("document.documentElement.scrollWidth <= innerWidth"), f"after {one}"
            found = axe.run(page, options={"rules": {"target-size": {"enabled": True}}})
            assert found.violations_count == 0, f"after {one}: {found.generate_report()}"
            assert page.evaluate("document.documentElement.scrollWidth") <= size[0], f"after {one}"
        page.goto(page.url.split("/proof/")[0] + "/proof/")
        assert Axe().run(page).violations_count == 0


def test_what_has_the_focus_is_seen(browser: Browser, shop: Shop) -> None:
    with proofing(shop.root, "heron") as (_, address), browser.new_context() as window:
        page = visit(window, address)
        for _ in range(25):
            page.keyboard.press("Tab")
            outline = page.evaluate(
                "() => { const s = getComputedStyle(document.activeElement); return s.outlineStyle + s.outlineWidth }"
            )
            assert outline.startswith(("solid", "auto")), page.evaluate("document.activeElement.outerHTML")


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_words_run_nothing(browser: Browser, shop: Shop, session: Session, text: str) -> None:
    source = hostile_source(text)
    assert source.transcript is not None
    write_atomic(session.record_file, source.record.to_json())
    write_atomic(session.transcript_file, source.transcript.to_json())
    with proofing(shop.root, "heron") as (_, address), browser.new_context() as window:
        page = visit(window, address)
        for one in "foiv":
            press(page, one)
            page.wait_for_timeout(100)
        press(page, "q", "n")
        page.keyboard.type(text[:40])
        press(page, "Enter")
        expect(page.locator("#kept")).to_have_text("Everything is on disk")
        assert page.evaluate("window.broken") is None
        assert page.locator("#proof img[src=x], #broken").count() == 0
