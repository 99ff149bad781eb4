"""The proof page in a real browser, worked from the keyboard alone; the server killed in the middle."""

from __future__ import annotations

import json
import re
import signal
import socket
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Route, expect

from capture.shop import Session, Shop
from extract.rulings import RulingLog, in_force
from tests.desk.serving import proofing

pytestmark = pytest.mark.browser


@contextmanager
def opened(window: BrowserContext, shop: Shop, *more: str) -> Iterator[Page]:
    """The proof page of the only session; what it complains of fails the test."""
    with proofing(shop.root, "heron", *more) as (_, address):
        yield visit(window, address)


def visit(window: BrowserContext, address: str) -> Page:
    page = window.new_page()
    complaints: list[str] = []
    page.on("console", lambda line: complaints.append(line.text) if line.type in ("error", "warning") else None)
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.goto(address)
    expect(page.locator("#tally")).to_contain_text("settled")
    assert complaints == []
    return page


def press(page: Page, *keys: str) -> None:
    for one in keys:
        page.keyboard.press(one)


def on_disk(page: Page) -> None:
    expect(page.locator("#kept")).to_have_text("Everything is on disk")


def at(page: Page, words: str) -> None:
    """The open item is the one with these words."""
    expect(page.locator(".sheet-part:not([hidden]) .current .turn")).to_contain_text(words)


def settled(page: Page, count: int) -> None:
    expect(page.locator("#tally")).to_have_text(re.compile(f"^{count} of"))


def title(page: Page) -> str:
    return " ".join((page.locator(".sheet-part:not([hidden]) .current .turn").text_content() or "").split())


def acts(session: Session) -> list[str]:
    return [one.act for one in in_force(RulingLog(session.rulings_file).read().rulings)]


def test_every_kind_of_item_is_ruled_on_by_keyboard_alone(window: BrowserContext, shop: Shop, session: Session) -> None:
    with opened(window, shop) as page:
        # To settle: figures that were worked out are taken, one without a unit is typed.
        at(page, "20 7/8")
        press(page, "1")
        expect(page.locator(".slip-form input[type=text]")).to_have_value("530 mm")
        press(page, "Enter")
        at(page, "no unit")
        press(page, "a")
        page.keyboard.type("12 hours")
        expect(page.locator(".slip-form output")).to_have_text("12 h")
        press(page, "Enter")
        at(page, "406 mm, not 250")
        press(page, "1", "Enter")
        # To listen to again: a note, then the rival.
        at(page, "listen again")
        press(page, "n")
        page.keyboard.type("with the good headphones")
        press(page, "Enter", "1", "Enter")
        # Taken back on film: accepted, struck.
        at(page, "is taken back")
        press(page, "s", "x")
        while "Engelmann" not in title(page):
            press(page, "s")
        # To look up: put in other words.
        press(page, "a", "ControlOrMeta+a")
        page.keyboard.type("Whether the top is cedar")
        press(page, "Enter")
        on_disk(page)
        given = acts(session)
        assert given[:7] == ["amend", "amend", "amend", "note", "amend", "stet", "strike"]
        assert given[-1] == "amend"

        # All figures: what a figure is of is amended as well as the figure.
        press(page, "f", "ArrowDown", "a")
        page.keyboard.type("9/64 in")
        page.locator(".naming summary").press("Enter")
        page.get_by_label("Where").fill("nut")
        page.get_by_label("Where").press("Enter")
        expect(page.locator(".slip-form")).to_have_count(0)
        on_disk(page)
        # The procedure: reworded, moved, merged, split, struck; keys that come faster than the answers wait for them.
        steps = page.locator("#procedure .query")
        press(page, "o")
        expect(steps).to_have_count(9)
        press(page, "ArrowDown", "a", "ControlOrMeta+a")
        page.keyboard.type("Slacken every string")
        press(page, "Enter", "Shift+ArrowDown", "m")
        expect(steps).to_have_count(8)
        at(page, "Slacken every string, then")
        press(page, "t", "ControlOrMeta+a")
        page.keyboard.type("Slacken every string\nHeat it")
        press(page, "ControlOrMeta+Enter")
        expect(steps).to_have_count(9)
        press(page, "ArrowDown", "x")
        expect(page.locator("#procedure .group:last-of-type .query")).to_have_count(1)
        on_disk(page)
        assert acts(session)[-6:] == ["amend", "amend", "reorder", "merge", "split", "strike"]


def test_what_was_ruled_is_there_after_a_reload(window: BrowserContext, shop: Shop) -> None:
    with opened(window, shop) as page:
        press(page, "s", "s", "s")
        on_disk(page)
        settled(page, 3)
        page.reload()
        settled(page, 3)
        expect(page.locator("#queries .settled .ruled.stet")).to_have_count(3)


def test_undo_and_redo_lead_back_to_the_item(window: BrowserContext, shop: Shop, session: Session) -> None:
    with opened(window, shop) as page:
        first = title(page)
        press(page, "x")
        on_disk(page)
        expect(page.locator("#undo")).to_be_enabled()
        press(page, "u")
        on_disk(page)
        at(page, first)
        assert acts(session) == []
        expect(page.locator("#redo")).to_be_enabled()
        press(page, "Shift+U")
        on_disk(page)
        assert acts(session) == ["strike"]


def test_a_server_that_was_killed_loses_nothing(window: BrowserContext, shop: Shop, session: Session) -> None:
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = str(free.getsockname()[1])
    with proofing(shop.root, "heron", "--port", port) as (process, address):
        page = visit(window, address)
        press(page, "s")
        on_disk(page)
        settled(page, 1)
        process.send_signal(signal.SIGKILL)
        process.wait()
        press(page, "s", "x")
        expect(page.locator("#kept")).to_have_text("2 not on disk yet")
        expect(page.locator("#trouble")).to_contain_text("The server does not answer. 2 rulings wait in this browser.")
        settled(page, 1)  # nothing counts before it is on disk
        expect(page.locator("#queries .flag.waits")).to_have_count(2)
    assert acts(session) == ["stet"]
    with proofing(shop.root, "heron", "--port", port) as (_, address):
        # The page that stayed open may not come in with the last run's key, and says where to go.
        expect(page.locator("#trouble")).to_contain_text("The server was started anew", timeout=10_000)
        other = visit(window, address)
        on_disk(other)
        assert acts(session) == ["stet", "stet", "strike"]
        # The new cookie is the whole browser's, so the page that stayed open works again.
        on_disk(page)
        expect(page.locator("#trouble")).to_be_empty()
        settled(page, 3)


def test_two_tabs_see_one_another_s_rulings_and_lose_none(window: BrowserContext, shop: Shop, session: Session) -> None:
    with opened(window, shop) as one:
        other = window.new_page()
        other.goto(one.url)
        expect(other.locator("#tally")).to_contain_text("settled")
        press(other, "ArrowDown", "ArrowDown")
        press(one, "s")
        press(other, "s")
        press(one, "x")
        for page in (one, other):
            on_disk(page)
            settled(page, 3)
            expect(page.locator("#queries .query.settled")).to_have_count(3)
    assert sorted(acts(session)) == ["stet", "stet", "strike"]


def test_another_browser_sees_them_too(browser: Browser, window: BrowserContext, shop: Shop) -> None:
    with proofing(shop.root, "heron") as (_, address), browser.new_context() as elsewhere:
        one, other = visit(window, address), visit(elsewhere, address)
        press(one, "s")
        settled(other, 1)


def test_what_the_server_refuses_stays_in_sight_until_a_person_drops_it(window: BrowserContext, shop: Shop) -> None:
    with opened(window, shop) as page:
        page.route("**/reads?*", lambda route: route.abort())
        press(page, "a")
        page.keyboard.type("12 parsecs")
        press(page, "Enter")
        expect(page.locator("#kept")).to_have_text("1 refused")
        page.reload()
        expect(page.locator("#kept")).to_have_text("1 refused")
        expect(page.locator("#trouble")).to_contain_text("parsecs")
        page.get_by_role("button", name="Drop this ruling").first.click()
        on_disk(page)


def test_a_full_disk_is_told_and_tried_again(window: BrowserContext, shop: Shop, session: Session) -> None:
    with opened(window, shop) as page:

        def full(route: Route) -> None:
            asked = json.loads(route.request.post_data or "")["rulings"]
            problem = "rulings.json: can't be written (No space left on device)"
            told = [{"id": one["id"], "kept": False, "again": True, "problem": problem} for one in asked[:1]]
            route.fulfill(json={"results": told})

        page.route("**/rulings", full)
        press(page, "s")
        expect(page.locator("#trouble")).to_contain_text("No space left on device")
        expect(page.locator("#trouble")).to_contain_text("1 ruling waits in this browser")
        settled(page, 0)
        page.unroute("**/rulings")
        settled(page, 1)
        on_disk(page)
        expect(page.locator("#trouble")).to_be_empty()
    assert acts(session) == ["stet"]


def test_a_ruling_of_a_tab_that_was_closed_is_sent_by_the_other(
    window: BrowserContext, shop: Shop, session: Session
) -> None:
    with opened(window, shop) as one:
        other = window.new_page()
        other.goto(one.url)
        settled(other, 0)
        one.route("**/rulings", lambda route: route.abort())
        press(one, "s")
        expect(one.locator("#kept")).to_have_text("1 not on disk yet")
        one.close()
        expect(other.locator("#tally")).to_have_text(re.compile("^1 of"), timeout=15_000)
        on_disk(other)
    assert acts(session) == ["stet"]


def test_the_clip_plays_its_few_seconds_slower_and_wider(window: BrowserContext, shop: Shop) -> None:
    with opened(window, shop) as page:
        while "7/64" not in title(page):
            press(page, "ArrowDown")
        still = page.locator(".current .frame img")
        expect(still).to_have_js_property("complete", True)
        assert still.evaluate("image => image.naturalWidth") > 0
        before = page.locator(".current .range").text_content()
        press(page, "w", "l")
        expect(page.locator(".current .range")).to_contain_text("at 0.75 of its speed")
        assert page.locator(".current .range").text_content() != before
        press(page, "p")
        page.wait_for_function("() => { const f = document.querySelector('.current video'); return f && !f.paused }")
        assert page.locator(".current video").evaluate("film => film.playbackRate") == 0.75
        expect(page.locator(".current .clip .go")).to_contain_text("Stop")
        press(page, "p")
        page.wait_for_function("() => document.querySelector('.current video').paused")


def test_the_page_to_be_published_stands_beside_the_rulings(window: BrowserContext, shop: Shop) -> None:
    with opened(window, shop) as page:
        press(page, "1", "Enter")
        settled(page, 1)
        press(page, "v")
        frame = page.frame_locator("iframe.galley")
        expect(frame.locator("#errata")).to_contain_text(re.compile("530.mm"))


def test_nothing_is_fetched_from_elsewhere(window: BrowserContext, shop: Shop) -> None:
    asked: list[str] = []
    window.on("request", lambda request: asked.append(request.url))
    with opened(window, shop) as page:
        for sheet in "foivq":
            press(page, sheet, "ArrowDown")
        page.wait_for_load_state("load")
        home = page.url.split("/proof/")[0]
    assert asked
    assert [url for url in asked if not url.startswith((home, "blob:"))] == []


def test_the_keys_can_be_looked_up_and_put_off(window: BrowserContext, shop: Shop) -> None:
    with opened(window, shop) as page:
        press(page, "?")
        expect(page.get_by_role("dialog", name="Keys")).to_contain_text("stet: let it stand")
        # WCAG 2.1, 2.1.4: keys of one character can be turned off.
        page.get_by_label("Keys off: only buttons").check()
        press(page, "Escape", "s")
        expect(page.locator("#kept")).to_have_text("Everything is on disk")
        settled(page, 0)


def test_the_list_of_sessions_fills_in_what_is_open(window: BrowserContext, shop: Shop) -> None:
    with opened(window, shop) as page:
        press(page, "s")
        on_disk(page)
        page.get_by_role("link", name="All sessions").click()
        expect(page.locator(".entry.session .aside")).to_have_text("2 to settle, 7 to look at")


def test_a_clip_has_its_own_way_to_add(window: BrowserContext, shop: Shop, session: Session) -> None:
    with opened(window, shop) as page:
        page.locator(".current").get_by_role("button", name="Add here").press("Enter")
        page.keyboard.type("7/64 in")
        press(page, "Enter")
        expect(page.locator(".slip-form")).to_have_count(0)
        on_disk(page)
        assert acts(session) == ["add"]
