"""The bench card: what stands on it, and that it fits its sheet in a real browser."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pypdfium2
import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

from extract.record import Record, Step
from publish.card import card_figure, card_setting, make_card, wait_for
from publish.context import Amended, Card, Elsewhere
from publish.page import make_page
from publish.render import Renderer
from publish.source import SessionSource
from tests.publish.hostile import HOSTILE, hostile_source
from tests.publish.session import SHOP, source

ASSETS = Path(__file__).parents[2] / "publish" / "assets"
# ISO 216 A4 and ANSI Y14.1 size A (Letter), millimetres.
SHEETS = {"A4": (210, 297), "Letter": (215.9, 279.4)}


def card_of(session: SessionSource) -> Card:
    card = make_card(make_page(session, SHOP), session.record)
    assert card is not None
    return card


def with_steps(count: int, words: int) -> SessionSource:
    """The invented session with so many steps of so many words."""
    session = source()
    first = session.record.steps[0]
    text = " ".join(
        ["slacken", "the", "strings", "in", "pairs", "and", "mind", "the", "nut"][n % 9] for n in range(words)
    )
    steps = tuple(Step(**{**first.model_dump(), "id": f"s-{n}", "number": n + 1, "text": text}) for n in range(count))
    return replace(session, record=session.record.model_copy(update={"steps": steps}))


def test_withdrawn_figures_are_not_worked_to() -> None:
    html = Renderer().card(card_of(source()))
    withdrawn = [one for one in source().record.measures if not one.stands]
    assert withdrawn
    assert "withdrawn" not in html


def test_open_figures_are_marked_and_the_card_says_that_it_is_not_proofed() -> None:
    card = card_of(source())
    assert card.proof.state == "unsettled"
    assert any(one.query for one in card.figures)
    assert "not settled" in Renderer().card(card)


def test_every_caution_stands_on_the_card() -> None:
    card, page = card_of(source()), make_page(source(), SHOP)
    assert card.cautions == page.cautions
    assert "local codes" in card.standing_caution


def test_times_to_wait_are_a_schedule_in_order_of_work() -> None:
    session = source()
    measures = tuple(
        one.model_copy(update={"kind": "time", "unit": "hour", "value": 12.0}) if one.attribute == "open time" else one
        for one in session.record.measures
    )
    card = card_of(replace(session, record=session.record.model_copy(update={"measures": measures})))
    assert [(wait.step, wait.what) for wait in card.waits] == [(7, "open time, hide glue")]


@pytest.mark.parametrize(
    ("attribute", "item", "what"),
    [
        ("time", "heat blanket", "heat blanket"),
        ("cure", "epoxy", "cure, epoxy"),
        ("time", None, "time"),
        (None, None, "time"),
    ],
)
def test_a_wait_says_what_it_is_for(attribute: str | None, item: str | None, what: str) -> None:
    measure = source().record.measures[0].model_copy(update={"attribute": attribute, "item": item})
    assert wait_for(measure) == what


def test_a_figure_has_brackets_once() -> None:
    row = next(row for group in make_page(source(), SHOP).groups for row in group.rows if row.second and row.first)
    other = replace(row.second, text="7.09 in (7 3/32 in)") if row.second else None
    figure = card_figure(replace(row, second=other))
    assert figure.text.endswith(" (7.09 in, 7 3/32 in)")


@pytest.mark.parametrize(("proposed", "note"), [(True, "as a later session has it, not confirmed"), (False, "")])
def test_a_figure_of_a_later_session_that_no_person_confirmed_says_so(proposed: bool, note: str) -> None:
    row = make_page(source(), SHOP).groups[0].rows[0]
    later = Elsewhere("../later/index.html", "Later", "0:53", proposed)
    figure = card_figure(replace(row, amended=Amended("said on film:", "180 °F", later)))
    assert figure.note == note
    assert "180" not in figure.text
    assert card_figure(replace(row, amended=Amended("first heard as", "18", None))).note == ""


def test_half_a_minute_is_no_time_to_wait() -> None:
    assert card_of(source()).waits == ()


def test_no_card_where_nothing_was_done() -> None:
    session = source()
    empty = replace(session, record=session.record.model_copy(update={"steps": ()}))
    assert make_card(make_page(empty, SHOP), empty.record) is None


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_stays_text(text: str) -> None:
    session = hostile_source(text)
    card = make_card(make_page(session, SHOP), session.record)
    if card is not None:
        assert "<script>alert" not in Renderer().card(card)


def on_disk(card: Card, folder: Path) -> Path:
    """The card as it stands in a site."""
    home = folder / "sessions" / "one"
    home.mkdir(parents=True)
    (folder / "assets").symlink_to(ASSETS)
    (home / "card.html").write_text(Renderer().card(card), encoding="utf-8")
    return home / "card.html"


@pytest.mark.browser
@pytest.mark.parametrize("sheet", SHEETS)
@pytest.mark.parametrize(
    ("steps", "words", "size"),
    [(6, 8, "roomy"), (15, 10, "close"), (20, 20, "tight"), (32, 22, "fine"), (60, 40, "fine")],
)
def test_a_card_fits_its_sheet(browser: Browser, tmp_path: Path, steps: int, words: int, size: str, sheet: str) -> None:
    card = card_of(with_steps(steps, words))
    page = browser.new_page()
    page.goto(on_disk(card, tmp_path).as_uri())
    paper = pypdfium2.PdfDocument(page.pdf(format=sheet))
    text = " ".join("".join(one.get_textpage().get_text_range() for one in paper).split())
    page.close()
    assert card_setting(card).size == size
    assert len(paper) == 1 or not card_setting(card).one_sheet
    width, height = paper[0].get_size()
    assert (width / 72 * 25.4, height / 72 * 25.4) == pytest.approx(SHEETS[sheet], abs=0.5)
    assert "makers of your tools" in text
    assert f"{steps} Slacken" in text


@pytest.mark.browser
@pytest.mark.parametrize("sheet", SHEETS)
def test_forty_steps_with_words_that_no_line_holds_stay_on_the_sheet(
    browser: Browser, tmp_path: Path, sheet: str
) -> None:
    session = with_steps(40, 6)
    long = "Unterseitenfussbodenschleifmaschinenersatzteillagerverwaltungsvorschrift" * 2
    steps = tuple(
        step.model_copy(update={"text": f"{step.text} {long}" if step.number % 13 == 0 else step.text})
        for step in session.record.steps
    )
    card = card_of(replace(session, record=session.record.model_copy(update={"steps": steps})))
    card = replace(card, tools=(*card.tools, long))
    width = int((SHEETS[sheet][0] - 20) / 25.4 * 96)
    window = browser.new_context(viewport={"width": width, "height": 900})
    page = window.new_page()
    page.goto(on_disk(card, tmp_path).as_uri())
    page.emulate_media(media="print")
    sideways = page.evaluate(
        "Math.max(...[...document.body.querySelectorAll('*')].map(one => one.getBoundingClientRect().right))"
    )
    paper = pypdfium2.PdfDocument(page.pdf(format=sheet))
    text = " ".join("".join(one.get_textpage().get_text_range() for one in paper).split())
    window.close()
    assert sideways <= width + 0.5
    assert all(f"{number} Slacken" in text for number in range(1, 41))
    assert card_setting(card).one_sheet
    assert len(paper) == 1


@pytest.mark.browser
@pytest.mark.parametrize("size", [(360, 740), (1280, 900)], ids=["phone", "desk"])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_card_is_open_to_everyone(browser: Browser, tmp_path: Path, size: tuple[int, int], scheme: str) -> None:
    window = browser.new_context(viewport={"width": size[0], "height": size[1]}, color_scheme=scheme)  # type: ignore[arg-type]
    page = window.new_page()
    page.goto(on_disk(card_of(source()), tmp_path).as_uri())
    found = Axe().run(page)
    letters = page.evaluate("parseFloat(getComputedStyle(document.body).fontSize)")
    sideways = page.evaluate("document.documentElement.scrollWidth")
    window.close()
    assert found.violations_count == 0, found.generate_report()
    assert sideways <= size[0]
    assert letters >= 16 or size[0] > 720, "on a phone the card is read, not printed"


def test_the_record_is_not_touched() -> None:
    record: Record = source().record
    before = record.to_json()
    card_of(source())
    assert record.to_json() == before
