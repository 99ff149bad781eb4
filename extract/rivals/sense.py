"""How well a stretch of words reads as measures, so that of two readings that sound alike the sensible one is taken.

"six to one degrees" falls as a range, "five hundred and eight three" is two numbers side by side, "sixty-six out" lacks a
unit: each is a flaw. "forty-three sixteenths" is rare on a rule, but no error.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache

import spacy
from spacy.language import Language

from capture.figures import digits_of
from extract.numbers.grammar import parse
from extract.quantities.draft import Draft
from extract.quantities.join import join
from extract.numbers.figure import Tape

FLAW = 2.5
"""Nats that one flaw counts for; chosen on the tuning half of tests/benchmarks/spoken_measures."""

_FALLING = 1.5
_SIDE_BY_SIDE = 1.0
_NO_UNIT = 0.5
_IMPROPER = 0.7
_LEFT_OVER = 1.0
_PARTS = frozenset({"thou", "thousandths", "sixteenths", "eighths", "fourths", "seconds", "mil", "millimetres", "radius"})
_TIMES = frozenset({"second", "minute", "hour"})


def flaws(text: str) -> float:
    """What a stretch of words has wrong with it as measures; 0 for none."""
    doc = _language().make_doc(text)
    tape, parsed = parse(doc)
    drafts = join(tape, parsed)
    found = sum(_own(draft) for draft in drafts)
    for before, after in zip(drafts, drafts[1:], strict=False):
        found += _SIDE_BY_SIDE * (before.end == after.start and before.unit is None)
    return found + _left_over(tape, drafts)


def _own(draft: Draft) -> float:
    number = draft.number
    low, high = draft.ends
    found = _FALLING * (number.low is not None and low >= high)
    found += _NO_UNIT * (draft.unit is None and number.form not in ("fraction", "mixed"))
    found += _IMPROPER * (number.form == "fraction" and number.value > 1 and (number.denominator or 1) >= 4)
    found += _NO_UNIT * (draft.unit is not None and draft.unit.name in _TIMES and number.value != Fraction(30))
    return float(found)


def _left_over(tape: Tape, drafts: tuple[Draft, ...]) -> float:
    """Names of parts and units that no number goes with, and numbers that belong to no figure."""
    taken = {at for draft in drafts for at in range(draft.start, draft.end)}
    return _LEFT_OVER * sum(
        tape.text(at) in _PARTS or digits_of(tape.text(at)) is not None for at in range(len(tape)) if at not in taken
    )


@cache
def _language() -> Language:
    return spacy.blank("en")
