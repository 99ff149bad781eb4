"""A figure that is set a power of ten away from what was just said of it by a sheet or a book.

Takes "the sheet says between 1.5 and 2, so I set it to 18 grams"; refuses "it should be 0.02 and I found 0.2", which is
what is wrong with the thing. Source: the narration itself.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.checks.finding import Suspicion, figure_text, symbol_of, with_unit
from extract.checks.linear import conversion
from extract.checks.said_in import holding
from extract.checks.talk import Said, Talk

SOURCE = "the narration itself: what it says that the figure should be"
_TABLE = "against"
_POWERS = (
    (Fraction(10), "ten times too much"),
    (Fraction(100), "a hundred times too much"),
    (Fraction(1, 10), "ten times too little"),
    (Fraction(1, 100), "a hundred times too little"),
)
_ASIDE = Fraction(12, 10)
"""How far beyond what was said a figure may lie once the point is moved."""
_APART, _REACH = 3, 12


def find_far_set(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that is set to what was said before it but for the place of the point."""
    for one in talk.said:
        told = talk.by_place.get(one.place - 1)
        if told is None or one.measure.cue - told.measure.cue > _APART or not _is_set(one) or not _is_told(told):
            continue
        ends = _ends(told, one)
        if ends is None:
            continue
        low, high = min(ends) / _ASIDE, max(ends) * _ASIDE
        for power, reason in _POWERS:
            meant = one.figure.value / power
            if low <= meant <= high:
                yield _suspect(told, one, meant, reason)
                break


def _is_set(one: Said) -> bool:
    said = " ".join(one.clause[-_REACH:])
    if one.measure.kind in (None, "rotation") or one.figure.fraction:
        return False
    return one.measure.unit_said and len(one.figures) == 1 and holding(_TABLE, "set").search(said) is not None


def _is_told(one: Said) -> bool:
    return holding(_TABLE, "told").search(" ".join(one.before[-_REACH:])) is not None


def _ends(told: Said, one: Said) -> list[Fraction] | None:
    """What was told in the unit of the figure; a figure whose unit was not said is taken to be in it."""
    values = [figure.value for figure in told.figures]
    if told.measure.unit_said:
        convert = conversion(told.measure.unit or "", one.measure.unit or "")
        if convert is None or convert.offset or told.measure.kind != one.measure.kind:
            return None
        values = [convert(value) for value in values]
    return values if min(values) > 0 else None


def _suspect(told: Said, one: Said, meant: Fraction, reason: str) -> Suspicion:
    measure, first = one.measure, told.measure
    likely = with_unit(figure_text(meant), symbol_of(measure))
    told_text = first.display if first.unit_said else first.quote
    message = f"{measure.display} is {reason} against {told_text}, said just before of what it should be: {likely}?"
    return Suspicion("implausible", "stop", (first, measure), message, SOURCE)
