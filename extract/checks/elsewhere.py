"""A figure whose very digits were said of the same thing before, ten, a hundred or a thousand times as large.

Takes "1.65 mm" of a pivot and then "16.5 mm" of it; refuses "5 mm" and "50 mm", whose one digit comes again by chance.
Source: the narration itself.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.checks.finding import Suspicion
from extract.checks.frames import Frames
from extract.checks.linear import conversion
from extract.checks.talk import Said, Talk

SOURCE = "the narration itself: the same digits, a power of ten apart"
_POWERS = frozenset(Fraction(10) ** power for power in (1, 2, 3))
_FEWEST_DIGITS = 2
_OF_CIRCUITS = frozenset({"voltage", "current", "resistance", "capacitance", "frequency"})
"""Of these every point of a circuit has its own."""
_APART = 2
"""Cues between: right behind each other they may be one figure in two units, or a count."""


def find_shifted(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that is an earlier one of the same thing with its point moved."""
    frames = Frames(talk, beyond=True)
    by_digits: dict[tuple[str, str | None], list[Said]] = {}
    for one in talk.said:
        digits = _digits(one)
        if digits is None:
            continue
        earlier = by_digits.setdefault((digits, one.measure.kind), [])
        found = next((other for other in earlier if _is_shifted(other, one) and _is_of_one(frames, other, one)), None)
        if found is not None:
            yield _suspect(found, one)
        earlier.append(one)


def _digits(one: Said) -> str | None:
    """The significant digits of a decimal figure; None where there is only one."""
    if one.figure.fraction or len(one.figures) > 1 or one.measure.unit is None or one.measure.difference:
        return None
    text = str(one.figure.value.numerator * 10**6 // one.figure.value.denominator).strip("0")
    return text if len(text) >= _FEWEST_DIGITS else None


def _is_shifted(first: Said, second: Said) -> bool:
    convert = conversion(first.measure.unit or "", second.measure.unit or "")
    if convert is None or convert.offset or not first.figure.value:
        return False
    ratio = second.figure.value / convert(first.figure.value)
    return ratio in _POWERS or 1 / ratio in _POWERS


def _is_of_one(frames: Frames, first: Said, second: Said) -> bool:
    if second.measure.cue - first.measure.cue < _APART or not (first.measure.unit_said and second.measure.unit_said):
        return False
    here, there = frames.named(first), frames.named(second)
    if second.measure.kind in _OF_CIRCUITS:
        return False
    return bool(here.things & there.things) and first.measure.attribute == second.measure.attribute


def _suspect(first: Said, second: Said) -> Suspicion:
    one, other = first.measure, second.measure
    message = f"{other.display} has the digits of {one.display}, said of the same before: is the point in its place?"
    return Suspicion("implausible", "stop", (one, other), message, SOURCE)
