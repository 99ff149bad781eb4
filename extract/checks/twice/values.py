"""Two figures as values: whether they may be one thing's, whether they agree, and how like a slip they differ.

Takes "7/64" and "9/64" for figures of one form; "68.05 mm" and "68" agree, "3 1/2 inches" and "4" don't.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from math import log

from extract.checks.agreement import agreement
from extract.checks.linear import Linear, conversion
from extract.checks.talk import Said

_FAR, _FAR_UNSAID = 6.0, 2.5
"""Sizes further apart than this are of two things; the second where the later unit was only supposed."""
_NEVER_ONE = 4
"""Figures this many times apart are no roundings of one another."""
_ROUNDED = 12
"""Said to a twelfth of its size a figure may be another one's rounding; coarser is a figure of its own."""
_DOUBLE = log(2.2)


def is_statement(one: Said) -> bool:
    """A figure of a thing itself: no bound, tolerance or restatement."""
    measure = one.measure
    bound = measure.limit or measure.tolerance or measure.same_as
    return measure.unit is not None and not bound and one.figure.value > 0


def may_be_one(first: Said, second: Said) -> bool:
    """Of one kind and size, as far as the unit of the second was said."""
    one, other = first.measure, second.measure
    if one.kind == other.kind:
        ratio = _ratio(first, second)
        return ratio is not None and 1 / _FAR < ratio < _FAR
    return not other.unit_said and 1 / _FAR_UNSAID < float(second.figure.value / first.figure.value) < _FAR_UNSAID


def agree(first: Said, second: Said) -> bool:
    """Told the same: exactly, as one of a range or within it, or rounded as far as anyone rounds."""
    one, other = first.measure, second.measure
    if one.kind != other.kind:
        return first.figure.value == second.figure.value
    convert = conversion(one.unit or "", other.unit or "")
    if convert is None or _is_far_off(first, second, convert):
        return False
    if any(agreement(a, b, convert) != "disagrees" for a in first.figures for b in second.figures):
        return not _is_of_its_own(first, second)
    ends, others = [convert(one.value) for one in first.figures], [one.value for one in second.figures]
    return min(ends) <= max(others) and min(others) <= max(ends)


def signs_of_values(first: Said, second: Said) -> dict[str, float]:
    """How far apart, in nats, and whether the one is the other with a slip: a digit, a numerator, the whole part."""
    one, other = first.figure, second.figure
    ratio = _ratio(first, second) if first.measure.kind == second.measure.kind else None
    apart = abs(log(ratio or float(other.value / one.value)))
    signs = {"ratio": apart}
    if apart > _DOUBLE:
        signs["ratio_big"] = 1.0
    if one.step == other.step and one.fraction == other.fraction:
        signs["same_step"] = 1.0
    if first.measure.unit == second.measure.unit:
        if _is_one_digit_off(one.value, other.value):
            signs["one_digit"] = 1.0
        if one.fraction and other.fraction and _share_a_part(one.value, other.value):
            signs["one_part"] = 1.0
    return signs


def _ratio(first: Said, second: Said) -> float | None:
    line = _line(first.measure.unit or "", second.measure.unit or "")
    exact = line[0] * float(first.figure.value) + line[1] if line else 0.0
    return float(second.figure.value) / exact if exact > 0 else None


@cache
def _line(unit: str, to: str) -> tuple[float, float] | None:
    convert = conversion(unit, to)
    return None if convert is None else (float(convert.factor), float(convert.offset))


def _is_far_off(first: Said, second: Said, convert: Linear) -> bool:
    """No rounding bridges this: a glance that spares the exact rule most pairs, blind at and below zero."""
    ends = [float(one.value) * float(convert.factor) for one in first.figures]
    others = [float(one.value) for one in second.figures]
    if convert.offset or min(*ends, *others) <= 0:
        return False
    return min(ends) > _NEVER_ONE * max(others) or min(others) > _NEVER_ONE * max(ends)


def _is_of_its_own(first: Said, second: Said) -> bool:
    """Two firm single figures in one unit that differ more than by rounding."""
    one, other = first.measure, second.measure
    if one.unit != other.unit or one.hedged or other.hedged or len(first.figures) + len(second.figures) > 2:
        return False
    a, b = first.figure.value, second.figure.value
    return a != b and abs(a - b) * _ROUNDED > max(a, b)


def _is_one_digit_off(one: Fraction, other: Fraction) -> bool:
    texts = [f"{float(value):.4f}".rstrip("0").rstrip(".") for value in (one, other)]
    return len(texts[0]) == len(texts[1]) > 1 and sum(a != b for a, b in zip(*texts, strict=True)) == 1


def _share_a_part(one: Fraction, other: Fraction) -> bool:
    """ "31 1/2" and "30 1/2", "6 7/8" and "6 5/8"."""
    return one % 1 == other % 1 or int(one) == int(other) > 0
