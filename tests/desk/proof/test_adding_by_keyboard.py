"""What the machine missed, put in from the keyboard alone, in a real browser."""

from __future__ import annotations

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from capture.shop import Session, Shop
from extract.rulings import RulingLog
from extract.rulings.model import Add
from tests.desk.proof.test_browser import at, on_disk, opened, press

pytestmark = pytest.mark.browser


def choose(page: Page, kind: str) -> None:
    page.keyboard.press("d")
    page.get_by_label("What the machine missed").focus()
    page.keyboard.type(kind)


def adds(session: Session) -> list[Add]:
    return [one for one in RulingLog(session.rulings_file).read().rulings if isinstance(one, Add)]


def test_a_figure_is_added_at_the_second_where_the_clip_stands(
    window: BrowserContext, shop: Shop, session: Session
) -> None:
    with opened(window, shop) as page:
        press(page, "f", "ArrowDown", "p")
        page.wait_for_function("() => (document.querySelector('.current video')?.currentTime ?? 0) > 0")
        expect(page.locator(".current video")).to_have_js_property("paused", value=False)
        press(page, "d")
        film = page.locator(".current video")
        assert film.evaluate("film => film.paused")
        second = film.evaluate("film => film.currentTime")
        page.keyboard.type("7/64 in")
        expect(page.locator(".slip-form output.reads")).to_contain_text("2.8")
        expect(page.locator(".slip-form output.aside")).to_contain_text("Said there:")
        page.locator(".naming summary").press("Enter")
        page.get_by_label("Where").fill("at the nut")
        press(page, "Enter")
        on_disk(page)
        expect(page.locator("#figures .ruled.add")).to_contain_text("added: ")
        (line,) = adds(session)
        assert abs(line.on.start - second) < 0.11
        assert (line.to.where, line.to.phase) == ("at the nut", "as_found")
        expect(page.locator("#undo")).to_be_enabled()
        press(page, "u")
        expect(page.locator("#figures .ruled.add")).to_have_count(0)


def test_steps_slips_and_tools_are_added_by_keyboard(window: BrowserContext, shop: Shop, session: Session) -> None:
    with opened(window, shop) as page:
        press(page, "o", "d")
        page.keyboard.type("Wipe the glue off")
        page.get_by_label("At (minutes:seconds)").fill("0:12")
        press(page, "Enter")
        expect(page.locator("#procedure .ruled.add")).to_have_text("added: Wipe the glue off")
        # Said wrong: the figure is chosen from the nearest, what was said fills itself in.
        press(page, "f", "ArrowDown")
        choose(page, "Something said")
        page.get_by_label("Which figure was said wrong").select_option(index=1)
        expect(page.get_by_label("What was said")).not_to_be_empty()
        page.get_by_label("Read instead").fill("0.11 in")
        press(page, "Enter")
        expect(page.locator(".slip-form")).to_have_count(0)
        on_disk(page)
        # A tool: added, renamed, struck, had back.
        press(page, "k", "d")
        page.keyboard.type("bench shears")
        press(page, "Enter")
        made = page.locator("#kit .query", has_text="bench shears")
        expect(made).to_have_count(1)
        while page.locator("#kit .current", has_text="bench shears").count() == 0:
            press(page, "ArrowDown")
        press(page, "a", "ControlOrMeta+a")
        page.keyboard.type("tin snips")
        press(page, "Enter")
        at(page, "tin snips")
        press(page, "x")
        expect(page.locator("#kit .group:last-of-type .query")).to_have_count(1)
        on_disk(page)
        assert [one.on.kind for one in adds(session)] == ["step", "correction", "tool"]
        assert adds(session)[1].withdraws is not None


def test_a_refused_addition_stays_in_sight_and_can_be_meant(
    window: BrowserContext, shop: Shop, session: Session
) -> None:
    with opened(window, shop) as page:
        page.route("**/reads?*", lambda route: route.abort())
        press(page, "d")
        page.keyboard.type("20 °C")
        page.locator(".naming summary").press("Enter")
        page.get_by_label("What is measured").fill("width")
        press(page, "Enter")
        expect(page.locator("#trouble")).to_contain_text("Refused: add")
        page.get_by_role("button", name="I mean it").press("Enter")
        on_disk(page)
        assert adds(session)[0].overrule


def test_a_second_that_is_none_keeps_the_form(window: BrowserContext, shop: Shop) -> None:
    with opened(window, shop) as page:
        press(page, "d")
        page.keyboard.type("7/64 in")
        page.get_by_label("At (minutes:seconds)").fill("noon")
        press(page, "Enter")
        expect(page.get_by_label("At (minutes:seconds)")).to_be_focused()
        expect(page.locator(".slip-form output.aside")).to_contain_text("Write it as 1:23")
        press(page, "Escape")
        expect(page.locator(".slip-form")).to_have_count(0)
