"""The site's search reads a question as `spokeshave find` does."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from publish.find import read_query
from publish.search.stems import stems_in
from tests.publish.narration import CUES

ROOT = Path(__file__).parents[3]
QUESTIONS = tomllib.loads((Path(__file__).parent / "questions.toml").read_text(encoding="utf-8"))["question"]


@pytest.fixture(scope="module")
def script(browser: Browser, served: str) -> Iterator[Page]:
    page = browser.new_page()
    page.goto(f"{served}/search/index.html")
    page.evaluate("shopSearch.load('units').then(units => { window.units = units; })")
    yield page
    page.close()


def expected(question: dict[str, Any]) -> list[tuple[Any, ...]]:
    return [(bound, kind, pytest.approx(low), pytest.approx(high)) for bound, kind, low, high in question["figures"]]


@pytest.mark.parametrize("question", QUESTIONS, ids=lambda one: one["text"])
def test_the_command_reads_it_so(question: dict[str, Any]) -> None:
    read = read_query(question["text"])
    assert {stem for word in read.words for stem in stems_in(word)} == set(question["words"])
    found = [(one.bound, one.span.kind, one.span.low, one.span.high) for one in read.figures]
    assert found == expected(question)


@pytest.mark.browser
@pytest.mark.parametrize("question", QUESTIONS, ids=lambda one: one["text"])
def test_the_page_reads_it_so(script: Page, question: dict[str, Any]) -> None:
    read = script.evaluate("text => shopSearch.read(text, units)", question["text"])
    assert read["words"] == question["words"]
    found = [(one["bound"], one["span"]["kind"], one["span"]["low"], one["span"]["high"]) for one in read["figures"]]
    assert found == expected(question)


@pytest.mark.browser
@pytest.mark.parametrize("text", ["", "   ", "3/0", "()<>=", "1/2/3", "\\", "9" * 20 + "/3 in", "a" * 2000, "💡 1/4"])
def test_the_page_reads_anything(script: Page, text: str) -> None:
    read = script.evaluate("text => shopSearch.read(text, units)", text)
    assert set(read) == {"words", "figures"}


@pytest.mark.browser
def test_the_page_finds_the_same_stems_as_sqlite(script: Page) -> None:
    """SQLite's tokeniser (https://www.sqlite.org/fts5.html, section 4.3.3) is the outside measure of Porter's rule."""
    data = (path.read_text(encoding="utf-8") for path in sorted((ROOT / "extract" / "data").glob("*.toml")))
    words = set(re.findall(r"[^\W_]+", " ".join((*CUES, *data)).casefold()))
    words |= set("Ångström naïve 10s 3mm caresses ponies feed agreed plastered motoring sized falling filing happy sky "
                 "relational conditional rational valenci digitizer operator feudalism decisiveness hopefulness "
                 "formaliti sensitiviti sensibiliti triplicate formative electriciti goodness revival allowance "
                 "airliner adjustable replacement adjustment adoption communism effective probate rate cease controll "
                 "roll generalizations oscillators".casefold().split())  # fmt: skip
    assert len(words) > 3000
    listed = sorted(words)
    stems = script.evaluate("words => words.map(word => shopSearch.stemsIn(word).join(' '))", listed)
    wrong = {word: stem for word, stem in zip(listed, stems, strict=True) if {stem} != stems_in(word)}
    assert wrong == {}
