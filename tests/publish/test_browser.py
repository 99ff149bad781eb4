"""The pages in a real browser, read from the disk as a person opens them."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, Literal

import pypdfium2
import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Page

from capture.shop import Shop
from publish import publish_shop
from publish.page import make_page
from publish.render import Renderer
from tests.publish.hostile import HOSTILE, hostile_shop, hostile_source
from tests.publish.in_memory import make_library
from tests.publish.library.sessions import shop_of_sessions

pytestmark = pytest.mark.browser

PHONE, DESK = (360, 740), (1280, 900)
Scheme = Literal["light", "dark"]


@dataclass
class Visit:
    """An open page, with all it asked for and complained of."""

    page: Page
    requests: list[str] = field(default_factory=list)
    complaints: list[str] = field(default_factory=list)


def visit(context: BrowserContext, path: Path, fragment: str = "") -> Visit:
    made = Visit(context.new_page())
    made.page.on("request", lambda request: made.requests.append(request.url))
    made.page.on("console", lambda line: made.complaints.append(f"{line.type}: {line.text}"))
    made.page.on("pageerror", lambda error: made.complaints.append(str(error)))
    made.page.goto(path.as_uri() + fragment)
    return made


def context(browser: Browser, size: tuple[int, int] = DESK, scheme: Scheme = "light", **more: Any) -> BrowserContext:
    return browser.new_context(viewport={"width": size[0], "height": size[1]}, color_scheme=scheme, **more)


@pytest.fixture
def pages(shop: Shop) -> tuple[Path, ...]:
    """The front page, the session page and the errata of a published shop."""
    (session,) = shop.sessions()
    (session.folder / "notes.md").write_text("# Before you start\n\nThe [whole story](https://heron.example/).\n")
    published = publish_shop(shop)
    return published.front, published.pages[0], published.front.with_name("errata.html")


@pytest.fixture(scope="module")
def library(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, ...]:
    """A page of each kind of the library over several sessions."""
    site = publish_shop(shop_of_sessions(tmp_path_factory.mktemp("library"))).front.parent
    work = site / "work" / "octave-mandola-bridge-reglued-and-saddle-replaced" / "index.html"
    return work, site / "figures" / "relief-neck.html", site / "figures" / "index.html", site / "kit" / "index.html"


@pytest.fixture
def every_page(pages: tuple[Path, ...], library: tuple[Path, ...]) -> tuple[Path, ...]:
    """The pages of one session's site, and those of the library."""
    return *pages, *library, pages[0].parent / "search" / "index.html"


def test_pages_ask_for_nothing_but_their_own_files(browser: Browser, every_page: tuple[Path, ...]) -> None:
    with context(browser) as window:
        for path in every_page:
            seen = visit(window, path)
            seen.page.wait_for_load_state("networkidle")
            assert seen.requests
            assert all(url.startswith("file://") for url in seen.requests)
            assert seen.complaints == []


def test_a_time_seeks_the_player_on_the_page(browser: Browser, pages: tuple[Path, ...]) -> None:
    with context(browser) as window:
        seen = visit(window, pages[1])
        seen.page.locator("#m-action-1 .at").click()
        seen.page.wait_for_function("document.getElementById('player').currentTime > 20")
        link = seen.page.locator("#m-action-1 .at").get_attribute("data-seconds")
        place = seen.page.evaluate("document.getElementById('player').currentTime")
        assert place == pytest.approx(float(link or 0), abs=3)
        assert seen.page.url == pages[1].as_uri(), "the page was not left"
        assert "Playing from 0:24" in (seen.page.locator("#playing").text_content() or "")
        assert seen.complaints == []


def test_the_words_being_said_are_marked_while_it_plays(browser: Browser, pages: tuple[Path, ...]) -> None:
    with context(browser) as window:
        seen = visit(window, pages[1])
        seen.page.locator("[id='t-19.6'] .at").click()
        seen.page.wait_for_selector("[id='t-19.6'][aria-current]", state="attached")


def test_a_time_works_from_the_keyboard(browser: Browser, pages: tuple[Path, ...]) -> None:
    with context(browser) as window:
        seen = visit(window, pages[1])
        seen.page.locator("#m-action-0 .at").focus()
        seen.page.keyboard.press("Enter")
        seen.page.wait_for_function("document.getElementById('player').currentTime > 15")


def test_without_a_script_a_time_plays_the_recording_from_there(browser: Browser, pages: tuple[Path, ...]) -> None:
    with context(browser, java_script_enabled=False) as window:
        seen = visit(window, pages[1])
        href = seen.page.locator("#m-action-1 .at").get_attribute("href")
        assert href is not None
        target = pages[1].parent.as_uri() + "/" + href
    with context(browser) as window:
        played = window.new_page()
        played.goto(target)
        played.wait_for_function("document.querySelector('video').currentTime > 20")
        assert played.evaluate("document.querySelector('video').currentTime") == pytest.approx(24.4, abs=3)


def test_captions_can_be_shown_from_the_disk(browser: Browser, pages: tuple[Path, ...]) -> None:
    with context(browser) as window:
        seen = visit(window, pages[1])
        words = seen.page.evaluate(
            """() => {
                const track = document.getElementById('player').textTracks[0];
                track.mode = 'hidden';
                return Array.from(track.cues, cue => cue.text);
            }"""
        )
        assert "7/64 [read 5/64 in], no, hang on," in " ".join(words[2].replace("\u202f", " ").split())
        assert "withdrawn: " not in words[3]
        assert seen.complaints == []


@pytest.mark.parametrize("width", [320, 360, 768, 1100])
def test_nothing_scrolls_sideways(browser: Browser, every_page: tuple[Path, ...], width: int) -> None:
    with context(browser, (width, 740)) as window:
        for path in every_page:
            page = visit(window, path).page
            assert page.evaluate("document.documentElement.scrollWidth") <= width


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_pages_are_open_to_everyone(
    browser: Browser, every_page: tuple[Path, ...], scheme: Scheme, size: tuple[int, int]
) -> None:
    with context(browser, size, scheme) as window:
        for path in every_page:
            page = visit(window, path).page
            found = Axe().run(page, options={"rules": {"target-size": {"enabled": True}}})
            assert found.violations_count == 0, found.generate_report()


@pytest.mark.parametrize("anchor", ["m-action-0", "c-rule", "t-19.6", "f-nut"])
def test_an_address_with_an_item_shows_it(browser: Browser, pages: tuple[Path, ...], anchor: str) -> None:
    with context(browser) as window:
        page = visit(window, pages[1], f"#{anchor}").page
        box = page.locator(f"[id='{anchor}']").bounding_box()
        assert box is not None
        assert 0 <= box["y"] < DESK[1]


def test_a_figure_copies_as_it_was_said(browser: Browser, pages: tuple[Path, ...]) -> None:
    with context(browser) as window:
        page = visit(window, pages[1]).page
        copied = page.evaluate(
            """() => {
                const figure = document.querySelector('#m-scale-0 .figure');
                getSelection().selectAllChildren(figure);
                return getSelection().toString();
            }"""
        )
        assert copied.replace("\u202f", " ") == "20 7/8 in"


def test_the_print_has_times_and_no_player(browser: Browser, pages: tuple[Path, ...], tmp_path: Path) -> None:
    with context(browser) as window:
        page = visit(window, pages[1]).page
        page.emulate_media(media="print")
        assert not page.locator("#player").is_visible()
        assert not page.locator(".contents").is_visible()
        made = page.pdf(prefer_css_page_size=True)
    paper = pypdfium2.PdfDocument(made)
    text = " ".join("".join(sheet.get_textpage().get_text_range() for sheet in paper).split())
    assert len(paper) > 2
    assert "Not proofed: 2 statements to settle" in text
    assert "0:24" in text
    assert "local codes" in text
    assert f"1 of {len(paper)}" in text
    width, height = paper[0].get_size()
    # ISO 216: A4 is 210 mm by 297 mm; a point is 1/72 in.
    assert (width / 72 * 25.4, height / 72 * 25.4) == pytest.approx((210, 297), abs=0.5)


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_runs_nothing(browser: Browser, tmp_path: Path, text: str) -> None:
    path = tmp_path / "index.html"
    path.write_text(Renderer().session(make_page(hostile_source(text), hostile_shop(text))), encoding="utf-8")
    with context(browser) as window:
        seen = visit(window, path)
        seen.page.wait_for_load_state("networkidle")
        assert seen.page.evaluate("window.broken") is None
        assert all(url.startswith("file://") for url in seen.requests)


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_runs_nothing_in_the_library(browser: Browser, tmp_path: Path, text: str) -> None:
    twice = (hostile_source(text), replace(hostile_source(text), slug="again"))
    made = tuple(make_page(one, hostile_shop(text)) for one in twice)
    with context(browser) as window:
        for number, page in enumerate(make_library(twice, made, hostile_shop(text)).values()):
            path = tmp_path / f"{number}.html"
            path.write_text(Renderer().library(page), encoding="utf-8")
            seen = visit(window, path)
            assert seen.page.evaluate("window.broken") is None
            assert all(url.startswith("file://") for url in seen.requests)
            seen.page.close()


def test_a_work_prints_with_its_plots_and_figures(browser: Browser, library: tuple[Path, ...]) -> None:
    with context(browser) as window:
        page = visit(window, library[0]).page
        page.emulate_media(media="print")
        assert page.locator(".plot").first.is_visible()
        made = page.pdf(prefer_css_page_size=True)
    paper = pypdfium2.PdfDocument(made)
    text = " ".join("".join(sheet.get_textpage().get_text_range() for sheet in paper).split())
    assert "Measured more than once" in text
    assert "2 March 2032" in text
