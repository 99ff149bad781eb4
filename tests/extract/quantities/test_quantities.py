"""Numbers with their units: phrases and whole narrations of several trades, from text fixtures."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from spacy.tokens import Doc

from extract.spans import Quantity
from tests.extract.marked import Expected, Marked, narration, phrases, read, single_lines

HERE = Path(__file__).parent
FILES = ("said", "meanings", "not_measures", "manner")
SINGLE = [one for name in FILES for one in single_lines(HERE / "phrases" / f"{name}.txt")]
CONTEXTS = phrases(HERE / "phrases" / "left_out.txt")
NARRATIONS = [narration(path) for path in sorted((HERE / "narrations").glob("*.txt"))]


def as_expected(doc: Doc, quantity: Quantity) -> Expected:
    """A quantity in the terms of the fixtures."""
    flags = {
        "unsaid": not quantity.unit_said,
        "hedged": quantity.hedged,
        "difference": quantity.difference,
        quantity.limit or "": quantity.limit is not None,
    }
    low = quantity.value if quantity.low is None else quantity.low
    high = quantity.value if quantity.high is None else quantity.high
    where = doc._.narration
    return Expected(
        cue=where.cue[quantity.start],
        quote=where.quote(doc, quantity.start, quantity.end),
        low=low,
        high=high,
        unit=quantity.unit.name if quantity.unit else None,
        flags=frozenset(name for name, holds in flags.items() if holds),
    )


def figure(one: Expected) -> tuple[object, ...]:
    """What whole narrations are held to: everything but limits and differences."""
    return one.cue, one.quote, one.low, one.high, one.unit, one.flags & {"hedged", "unsaid"}


@pytest.mark.parametrize("phrase", [*SINGLE, *CONTEXTS], ids=lambda phrase: phrase.name)
def test_phrases(phrase: Marked) -> None:
    doc = read(phrase.lines)
    assert [as_expected(doc, one) for one in doc._.quantities] == list(phrase.expected)


@pytest.mark.parametrize("whole", NARRATIONS, ids=lambda whole: whole.name)
def test_narrations(whole: Marked) -> None:
    doc = read(whole.lines)
    found = [as_expected(doc, one) for one in doc._.quantities]
    assert [figure(one) for one in found] == [figure(one) for one in whole.expected]


def test_values_are_exact() -> None:
    doc = read(("it is 0.1 inch and 1/3 of an inch",))
    assert [one.value for one in doc._.quantities] == [Fraction(1, 10), Fraction(1, 3)]
