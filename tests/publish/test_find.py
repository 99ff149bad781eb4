"""Finding by words, figures and bounds, in any unit."""

from __future__ import annotations

import contextlib
import json
import os
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given
from hypothesis import strategies as st

from capture.shop import SessionSettings, Shop
from desk.cli import spokeshave
from extract.units import to_unit
from publish.find import Hit, Index, read_query, search
from publish.find.index import FILE
from publish.find.query import QueryError
from publish.find.scale import span_of
from tests.publish.session import record


def ask(shop: Shop, question: str, most: int = 50) -> list[Hit]:
    with Index.of(shop) as index:
        assert index.problems == ()
        return list(search(index, read_query(question), most))


def told(shop: Shop, question: str, sort: str = "figure") -> list[str]:
    return [hit.told.replace("\N{NO-BREAK SPACE}", " ") for hit in ask(shop, question) if hit.sort == sort]


@pytest.mark.parametrize(
    ("question", "expected"),
    [
        ("saddle slot 2.54 mm", "width, saddle slot: 0.100 in (2.54 mm), as left"),
        ("slot 0.1 inch", "width, saddle slot: 0.100 in (2.54 mm), as left"),
        ("1/8 thickness", "thickness, saddle blank: 1/8 in (3.2 mm), aim"),
        ("thickness an eighth of an inch", "thickness, saddle blank: 1/8 in (3.2 mm), aim"),
        ("radius > 10 ft", "radius, top: 25 ft (7.6 m), as found"),
        ("radius over 3 metres", "radius, top: 25 ft (7.6 m), as found"),
        ("plate at 60 C", "temperature, plate: at most 140 °F (at most 60 °C), aim"),
        ("clearance 0.3 mm", "clearance, bass side: 10 to 12 thou (0.25 to 0.30 mm), aim"),
    ],
)
def test_a_figure_is_found_in_any_unit(shop: Shop, question: str, expected: str) -> None:
    assert expected in told(shop, question)


@pytest.mark.parametrize("question", ["radius < 10 ft", "radius under 3 m", "slot 3.4 mm", "thickness 1/16"])
def test_another_figure_is_not_found(shop: Shop, question: str) -> None:
    assert not any("radius" in one or "saddle" in one for one in told(shop, question))


def test_withdrawn_figures_are_found_by_word_alone(shop: Shop) -> None:
    withdrawn = told(shop, "taken back")
    assert withdrawn
    assert all(one.endswith("taken back") for one in withdrawn)


def test_words_are_found_by_their_stem_and_their_beginning(shop: Shop) -> None:
    assert told(shop, "slackening strings", "step") == ["Slacken the strings in pairs"]
    assert told(shop, "slack string", "step") == ["Slacken the strings in pairs"]


@pytest.mark.parametrize(
    "question", ['"', "( ) * ^ : -", "a OR b", "NEAR(saddle slot)", "saddle*", "'; DROP TABLE item;--"]
)
def test_a_question_is_words_whatever_it_holds(shop: Shop, question: str) -> None:
    with contextlib.suppress(QueryError):
        ask(shop, question)
    assert ask(shop, "saddle")


def test_every_hit_leads_to_a_place_on_the_page(shop: Shop) -> None:
    from publish import publish_shop

    publish_shop(shop)
    hits = ask(shop, "saddle", most=200)
    assert {hit.sort for hit in hits} >= {"figure", "step", "tool", "material", "said"}
    for hit in hits:
        page, _, anchor = hit.href.partition("#")
        assert f'id="{anchor}"' in (shop.public / page).read_text()


def test_a_changed_session_is_read_again_and_an_unchanged_one_is_not(shop: Shop) -> None:
    (session,) = shop.sessions()
    assert ask(shop, "slacken")
    (shop.root / FILE).touch()
    steps = tuple(one.model_copy(update={"text": "Tighten the strings", "quote": ""}) for one in record().steps[:1])
    session.record_file.write_text(record().model_copy(update={"steps": steps}).to_json())
    os.utime(session.record_file, ns=(1, 1))
    assert told(shop, "slacken", "step") == []
    assert told(shop, "tighten", "step") == ["Tighten the strings"]


def test_a_session_taken_away_is_found_no_more(shop: Shop) -> None:
    (session,) = shop.sessions()
    assert ask(shop, "saddle")
    shop.remove(session)
    assert ask(shop, "saddle") == []


@pytest.mark.parametrize("broken", [b"", b"no database", b"SQLite format 3\0" + b"x" * 4096])
def test_a_broken_index_is_made_anew(shop: Shop, broken: bytes) -> None:
    (shop.root / FILE).write_bytes(broken)
    assert ask(shop, "saddle")


def test_a_session_that_cannot_be_read_is_told(shop: Shop) -> None:
    shop.add_session(SessionSettings(title="Broken", date=date(2031, 6, 1))).record_file.write_text("{")
    with Index.of(shop) as index:
        assert len(index.problems) == 1
        assert search(index, read_query("saddle"))


@given(st.integers(1, 640), st.sampled_from(["inch", "millimeter", "foot"]))
def test_a_figure_meets_itself_in_every_unit(sixty_fourths: int, unit: str) -> None:
    value = Fraction(sixty_fourths, 64)
    said = span_of(value, "inch", f"{sixty_fourths}/64")
    exact = to_unit(value, "inch", unit)
    asked = span_of(exact, unit, f"{float(exact):.6f}")
    assert said is not None
    assert asked is not None
    assert said.low <= asked.high
    assert asked.low <= said.high


def test_the_command_prints_and_leads_there(shop: Shop, tmp_path: Path) -> None:
    done = CliRunner().invoke(spokeshave, ["find", "--shop", str(shop.root), "saddle", "slot", "2.54", "mm"])
    assert done.exit_code == 0, done.output
    assert "width, saddle slot" in done.output
    assert "index.html#m-" in done.output
    as_json = CliRunner().invoke(spokeshave, ["find", "--shop", str(shop.root), "--json", "saddle"])
    assert json.loads(as_json.stdout)[0]["sort"]
