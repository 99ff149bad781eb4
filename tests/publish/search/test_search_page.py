"""The search page in a real browser: from a plain server and from the disk, with the keyboard, for everyone."""

from __future__ import annotations

import shutil
from dataclasses import replace
from pathlib import Path
from urllib.parse import quote, unquote, urlsplit

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

from capture.files import write_atomic
from capture.shop import Shop
from publish import publish_shop
from publish.find import Index, read_query, search
from publish.search import handed_over, searched_of
from tests.publish.hostile import HOSTILE, hostile_source
from tests.publish.session import record
from tests.publish.test_browser import DESK, PHONE, Scheme, context, visit

pytestmark = pytest.mark.browser

ANSWERED = "!/^(Looking|$)/.test(document.getElementById('told').textContent)"


def ask(page: Page, site: str, question: str) -> list[str]:
    """The addresses of all that is found, from the front page's folder."""
    page.goto(f"{site}/search/index.html?q={quote(question)}")
    page.wait_for_function(ANSWERED)
    while page.locator("#further").is_visible():
        told = page.locator("#told").text_content()
        page.locator("#further button").click()
        page.wait_for_function("told => document.getElementById('told').textContent !== told", arg=told)
    hrefs = page.locator("#hits a").evaluate_all("links => links.map(link => link.getAttribute('href'))")
    return [unquote(href.removeprefix("../")) for href in hrefs]


@pytest.mark.parametrize(
    "question",
    [
        "saddle slot 2.54 mm", "action 7/64", "action 2.8 mm", "action < 2 mm", "radius > 10 ft", "relief 0.2 mm",
        "slackening strings", "slack string", "heron", "ukulele action", "taken back", "plate at 60 C", "2 to 3 mm",
        "nothing of the kind",
    ],
)  # fmt: skip
def test_it_finds_what_the_command_finds(browser: Browser, searched: Shop, site: str, question: str) -> None:
    with Index.of(searched) as index:
        expected = {unquote(hit.href) for hit in search(index, read_query(question), most=10_000)}
    with context(browser) as window:
        assert set(ask(window.new_page(), site, question)) == expected


def test_a_box_on_every_page_leads_there(browser: Browser, searched: Shop, site: str) -> None:
    pages = [path for path in searched.public.rglob("*.html") if path.name != "card.html"]
    pages.remove(searched.public / "search" / "index.html")
    kinds = {path.relative_to(searched.public).parts[0]: path for path in pages}
    assert {"index.html", "errata.html", "sessions", "work", "figures", "kit"} <= set(kinds)
    with context(browser) as window:
        page = window.new_page()
        for path in kinds.values():
            page.goto(f"{site}/{quote(path.relative_to(searched.public).as_posix())}")
            page.get_by_role("searchbox").fill("saddle slot 2.54 mm")
            page.keyboard.press("Enter")
            page.wait_for_selector("#hits a")
            assert "0.100\u00a0in (2.54\u00a0mm)" in (page.locator("#hits").text_content() or "")


def test_a_hit_tells_film_second_and_both_units_and_leads_to_its_row(browser: Browser, site: str) -> None:
    with context(browser) as window:
        page = window.new_page()
        ask(page, site, "slot 0.1 inch")
        hit = page.locator("#hits li").last
        assert "0.100\u00a0in (2.54\u00a0mm)" in (hit.text_content() or "")
        assert "The Heron: a lifting bridge, and a new saddle (2031-05-14) at 2:" in (hit.text_content() or "")
        hit.locator("a").click()
        page.wait_for_selector("tr:target")
        assert "0.100" in (page.locator("tr:target").text_content() or "")


def test_it_asks_nobody_else_and_reads_no_more_than_it_needs(browser: Browser, served: str) -> None:
    with context(browser) as window:
        page = window.new_page()
        asked: list[str] = []
        page.on("request", lambda request: asked.append(request.url))
        ask(page, served, "ukulele")
        assert all(url.startswith(served) for url in asked)
        paths = [Path(urlsplit(url).path) for url in asked]
        assert sorted(one.name for one in paths if one.suffix == ".js" and "assets" not in one.parts) == [
            "2032-11-20-a-ukulele-s-action.js", "sessions.js", "t-uk.js", "units.js",
        ]  # fmt: skip


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_it_is_open_to_everyone(browser: Browser, served: str, scheme: Scheme, size: tuple[int, int]) -> None:
    with context(browser, size, scheme) as window:
        page = window.new_page()
        ask(page, served, "action")
        assert page.locator("#hits a").count() > 3
        found = Axe().run(page, options={"rules": {"target-size": {"enabled": True}}})
        assert found.violations_count == 0, found.generate_report()
        assert page.evaluate("document.documentElement.scrollWidth") <= size[0]


def test_it_works_from_the_keyboard_and_speaks(browser: Browser, served: str) -> None:
    with context(browser) as window:
        page = window.new_page()
        page.goto(f"{served}/search/index.html")
        page.keyboard.type("radius > 10 ft")
        page.keyboard.press("Enter")
        page.wait_for_selector("#hits a")
        assert page.get_by_role("status").text_content() == "1 place found."
        assert "q=radius" in page.url
        page.keyboard.press("Tab")
        page.keyboard.press("Tab")
        page.keyboard.press("Enter")
        page.wait_for_url("**/sessions/**")


def test_a_question_without_words_says_what_to_write(browser: Browser, served: str) -> None:
    with context(browser) as window:
        page = window.new_page()
        page.goto(f"{served}/search/index.html?q=%3F%3F")
        page.wait_for_function(ANSWERED)
        assert "Write words or figures" in (page.locator("#told").text_content() or "")


def test_without_scripts_it_names_the_command(browser: Browser, searched: Shop) -> None:
    with context(browser, java_script_enabled=False) as window:
        page = visit(window, searched.public / "search" / "index.html").page
        assert "spokeshave find" in (page.locator("noscript").text_content() or "")


def test_where_its_files_are_gone_it_names_the_command(browser: Browser, searched: Shop, tmp_path: Path) -> None:
    site = tmp_path / "site"
    shutil.copytree(searched.public, site)
    shutil.rmtree(site / "search" / "items")
    with context(browser) as window:
        page = window.new_page()
        page.goto((site / "search" / "index.html").as_uri() + "?q=saddle")
        page.wait_for_function(ANSWERED)
        assert "spokeshave find" in (page.locator("#told").text_content() or "")


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_words_stay_words(browser: Browser, shop: Shop, text: str) -> None:
    (session,) = shop.sessions()
    hostile = hostile_source(text).record
    facts = record().session.model_copy(update={"title": f"saddle {text}"})
    write_atomic(session.record_file, hostile.model_copy(update={"session": facts}).to_json())
    publish_shop(shop)
    with context(browser) as window:
        page = window.new_page()
        found = ask(page, shop.public.as_uri(), "slot")
        assert found
        assert text.split()[0] in (page.locator("#hits").text_content() or "")
        assert page.evaluate("window.broken") is None
        page.goto(f"{shop.public.as_uri()}/search/index.html?q={quote(text)}")
        page.wait_for_function(ANSWERED)
        assert page.evaluate("window.broken") is None


@pytest.mark.parametrize("text", HOSTILE)
def test_no_word_ends_a_script(text: str) -> None:
    made = handed_over(text, searched_of(replace(hostile_source(text), slug=text)).items).decode()
    assert not set(made) & set("<>&\u2028\u2029")
    assert made.count("\n") == 1
