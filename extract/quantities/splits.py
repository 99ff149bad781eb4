"""Figures that were read as one and are two: "1.1, or 16 psi" behind bars, "two ten mil dowels"."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from extract.numbers.figure import Tape
from extract.numbers.grammar import figure
from extract.numbers.ranges import behind_link
from extract.quantities.draft import Draft
from extract.spans import Number
from extract.units import to_unit, unit_data

_SEVERAL = 2
_AGAIN_SLACK = Fraction(3, 100)


def said_again(tape: Tape, draft: Draft) -> tuple[Draft, Draft] | None:
    """ "1.1, or 16 psi" behind bars: no range, but one pressure in two units."""
    number, unit = draft.number, draft.unit
    if unit is None or number.low is None or number.high is None or number.low <= 0:
        return None
    exact = [to_unit(number.low, name, unit) for name in unit_data()["dual"].get(unit.name, ())]
    if not any(abs(value - number.high) <= value * _AGAIN_SLACK for value in exact):
        return None
    low = figure(tape, draft.start)
    at = behind_link(tape, low.end) if low else None
    if low is None or at is None or low.value != number.low:
        return None
    if "or" not in (tape.text(between) for between in range(low.end, at)):
        return None  # "6 to 8 newton metres", which happen to be foot-pounds and newton metres
    ends = tape.lexemes[low.end - 1].token + 1, tape.lexemes[at].token
    first = replace(number, end=ends[0], value=number.low, low=None, high=None, form=low.form, decimals=low.decimals)
    second = replace(number, start=ends[1], value=number.high, low=None, high=None)
    return Draft(draft.start, low.end, first, None), replace(draft, start=at, number=second)


def count_before(tape: Tape, draft: Draft) -> Draft | None:
    """The "two" of "two ten mil dowels", which is no 210 mil: so many things of that size."""
    several = draft.grouped and draft.unit is not None and draft.number.form == "integer"
    at = draft.start
    if not several or tape.kind(at) != "ones" or tape.kind(at + 1) not in ("teens", "tens"):
        return None
    if not tape.is_noun(draft.end) or not tape.text(draft.end).endswith("s") or tape.value(at) < _SEVERAL:
        return None
    token = tape.lexemes[at].token
    return Draft(at, at + 1, Number(start=token, end=token + 1, value=tape.value(at), form="integer"), None)


def without_count(tape: Tape, draft: Draft) -> Number:
    """The number without its first group."""
    first = tape.value(draft.start)
    return replace(draft.number, start=draft.number.start + 1, value=draft.number.value - first * 100)
