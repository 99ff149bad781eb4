"""Rivals of what was heard: a table of mishearings, and invariants on any words."""

from __future__ import annotations

import tomllib
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from extract.rivals import MOST, find_rivals
from extract.rivals.bands import outside
from extract.rivals.confusions import confusions
from extract.rivals.sense import flaws
from extract.rivals.spelling import cardinal, joined
from extract.trade import load_trade

CASES = tomllib.loads(Path(__file__).with_name("rivals.toml").read_text("utf-8"))


@pytest.mark.parametrize("case", CASES["found"], ids=lambda case: case["heard"])
def test_what_was_said_is_among_the_rivals(case: dict[str, str]) -> None:
    words = case["heard"].split()
    readings = []
    for doubt in find_rivals(words):
        for rival in doubt.rivals:
            readings.append(" ".join([*words[: doubt.start], rival.text, *words[doubt.end :]]))
    assert any(case["rival"] in reading for reading in readings), readings


@pytest.mark.parametrize("case", CASES["none"], ids=lambda case: case["heard"])
def test_no_figure_no_rivals(case: dict[str, str]) -> None:
    assert find_rivals(case["heard"].split()) == []


words = st.lists(
    st.sampled_from([
        "the", "slot", "is", "six", "to", "one", "sixteenths", "1164", "930", "seconds", "point", "4,000", "thou",
        "eighth", "an", "and", "forty-three", "no", "weight,", "wide.", "ten", "out", "half",
    ]),
    max_size=14,
)  # fmt: skip


@settings(deadline=None)  # A busy machine takes longer; nothing here is timed.
@given(words)
def test_spans_rise_apart_and_no_rival_is_what_was_heard(drawn: list[str]) -> None:
    at = 0
    for doubt in find_rivals(drawn):
        assert at <= doubt.start < doubt.end <= len(drawn)
        at = doubt.end
        texts = [rival.text for rival in doubt.rivals]
        assert len(texts) <= MOST
        assert len(set(texts)) == len(texts)
        assert " ".join(drawn[doubt.start : doubt.end]) not in texts
        assert all(rival.why for rival in doubt.rivals)


@pytest.mark.parametrize(
    ("sensible", "flawed"),
    [
        ("at sixty-one degrees", "at six to one degrees"),
        ("five hundred and eighty-three millimetres", "five hundred and eight three millimetres"),
        ("nine thirty-seconds wide", "930 seconds wide"),
        ("fifteen thou thick", "fifteen mouth thick"),
        ("three sixty-fourths", "forty-three sixteenths"),
    ],
)
def test_sense(sensible: str, flawed: str) -> None:
    assert flaws(sensible) < flaws(flawed)


def test_a_band_tells_a_likely_action_from_an_unlikely_one() -> None:
    # The band of a guitar's action: extract/trades/strings.toml.
    strings = load_trade("strings")
    said = ["the", "action", "is"]
    assert not outside(Fraction(5, 64), "inch", said, strings)
    assert outside(Fraction(40), "inch", said, strings)
    assert not outside(Fraction(40), "inch", ["the", "board", "is"], strings)
    assert flaws("is five inches", said, strings) > flaws("is five inches")


def test_every_row_of_confusions_changes_something() -> None:
    for row in confusions():
        assert row.heard != row.said, row
        assert row.why


def test_numbers_in_words() -> None:
    assert [joined(cardinal(number).split()) for number in (7, 12, 30, 64, 583)] == [
        "seven", "twelve", "thirty", "sixty-four", "five hundred and eighty-three",
    ]  # fmt: skip
    assert joined(["eleven", "sixty", "fourths"]) == "eleven sixty-fourths"
    assert joined(["nine", "thirty", "seconds"]) == "nine thirty-seconds"
