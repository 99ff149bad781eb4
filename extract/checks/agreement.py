"""Whether two figures for one thing agree within how precisely each was said.

Takes "24 in" with "610 mm" (agrees) and "24 in" with "600 mm" (close); refuses "24 in" with "630 mm".

What agrees rests on the published rounding rules (see rounding.py). What is close is our own choice: the two spans of
rounding overlap and the error stays under a cap. Caps are percentages because half an eighth of an inch is so wide that
"3/8 in or 10.5 mm", ten in a hundred off, would pass without one.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from extract.checks.figure import Figure
from extract.checks.linear import Linear
from extract.checks.rounding import converted_step, round_converted
from extract.rounding import to_step

Verdict = Literal["agrees", "close", "disagrees"]
Side = Literal["at_most", "at_least"]


@dataclass(frozen=True, slots=True)
class Caps:
    """How far from the exact conversion a figure may lie, as a part of it; our own choice, no source."""

    rounded: Fraction = Fraction(30, 100)
    """A figure rounded to its last place: 1/32 in is 0.79 mm, said as 1 mm."""
    rounded_back: Fraction = Fraction(1, 100)
    """The first figure is the rounded one: 10 mm for 0.390 in."""
    loose: Fraction = Fraction(5, 100)
    """The zeros of a hedged integer stand for nothing: "about 600 mm"."""
    overlap: Fraction = Fraction(25, 1000)
    """The spans of rounding overlap."""
    hedged_overlap: Fraction = Fraction(7, 100)
    fraction: Fraction = Fraction(7, 100)
    """Said as the nearest fraction of its denominator: 10 mm for 3/8 in."""
    hedged_fraction: Fraction = Fraction(12, 100)
    derived: Fraction = Fraction(5, 1000)
    """Each figure may have been worked out by itself from figures that were rounded."""


CAPS = Caps()


def agreement(
    first: Figure, second: Figure, to_second: Linear, limit: Side | None = None, caps: Caps = CAPS
) -> Verdict:
    """The verdict on `second` said as the same as `first`.

    `to_second` converts from the unit of `first` into that of `second`. Where the figures are a limit, close is not
    good enough and `second` must not be looser than `first`: NIST SP 1038 section 4.4 has 10 ft of clearance as 3.05 m,
    not 3 m.
    """
    if first.hedged or second.hedged:
        first, second = replace(first, hedged=True), replace(second, hedged=True)
    exact = to_second(first.value)
    if limit is not None:
        loosened = second.value < exact if limit == "at_least" else second.value > exact
        return "agrees" if _agrees(first, second, to_second, caps) and not loosened else "disagrees"
    if _agrees(first, second, to_second, caps):
        return "agrees"
    return "close" if _is_close(first, second, to_second, caps) else "disagrees"


def error_of(exact: Fraction, said: Fraction, to_said: Linear) -> Fraction:
    """How far `said` lies from `exact`, as a part of `exact`."""
    against = max(abs(exact), to_said.floor)
    return abs(said - exact) / against if against else Fraction(said != exact)


def _agrees(first: Figure, second: Figure, to_second: Linear, caps: Caps) -> bool:
    exact, back = to_second(first.value), to_second.inverse(second.value)
    error = error_of(exact, second.value, to_second)
    if second.value == exact or _is_published_rounding(first, second, exact):
        return True
    if second.fraction:
        nearest = to_step(exact, second.step) == second.value
        if nearest and error <= caps.derived:
            return True
    elif abs(exact - second.value) <= second.half and error <= caps.rounded:
        return True
    if error <= caps.rounded_back and _is_coarser(first, second) and abs(back - first.value) <= first.half:
        return True
    return second.hedged and error <= caps.loose and abs(exact - second.value) <= second.loose_half


def _is_coarser(first: Figure, second: Figure) -> bool:
    """`first` is plainly the rounded one: ten times less precise, or in digits where `second` is a fraction."""
    if first.fraction or first.value == 0 or second.value == 0:
        return False
    return second.fraction or first.step / abs(first.value) > 10 * second.step / abs(second.value)


def _is_published_rounding(first: Figure, second: Figure, exact: Fraction) -> bool:
    """Zeros behind a decimal point claim their place, so 0.090 is no rounding to two places; zeros of 610 may not."""
    claimed = second.step >= min(converted_step(first, exact), Fraction(1))
    return claimed and second.value == round_converted(first, exact)


def _is_close(first: Figure, second: Figure, to_second: Linear, caps: Caps) -> bool:
    exact = to_second(first.value)
    error = error_of(exact, second.value, to_second)
    if error <= caps.derived or (to_second.offset and _is_round_heat(exact, second, to_second)):
        return True
    overlaps = abs(exact - second.value) <= first.loose_half * abs(to_second.factor) + second.loose_half
    if (
        overlaps
        and error <= (caps.hedged_overlap if second.hedged else caps.overlap)
        and (second.hedged or not to_second.whole)
    ):
        return True
    nearest = second.fraction and to_step(exact, second.step) == second.value
    return nearest and error <= (caps.hedged_fraction if second.hedged else caps.fraction)


def _is_round_heat(exact: Fraction, second: Figure, to_second: Linear) -> bool:
    """ "70 Fahrenheit, so 20 Celsius": to the nearest five degrees, and a degree or so off."""
    near = max(Fraction(1), to_second.factor) * Fraction(3, 2)
    return (second.value / 5).denominator == 1 and abs(exact - second.value) <= near
