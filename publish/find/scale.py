"""Figures on one scale a kind, so that 3/32 in and 2.4 mm lie on each other.

Takes a figure's written form for how precisely it was said: "2.4 mm" is 2.35 to 2.45 mm, "3/32 in" is a hair about it.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from extract.units import UnitError, to_unit, unit_rows
from publish.written import fineness

BASE = {
    "length": "millimeter", "temperature": "degC", "mass": "gram", "force": "newton", "torque": "newton * meter",
    "time": "second", "volume": "milliliter", "pressure": "bar", "angle": "degree", "area": "millimeter ** 2",
}  # fmt: skip
"""The unit to compare in, by kind; other kinds are compared in their own unit."""
_HAIR = Fraction(1, 200)
"""How wide a fraction is taken, as a part of it."""
_WIDE = Fraction(25, 1000)
"""How wide a decimal is taken at most: a coarse "0.1" would meet half of all slots."""


@dataclass(frozen=True, slots=True)
class Span:
    """What a figure covers, in the base unit of its kind."""

    kind: str
    low: float
    high: float


def span_of(value: Fraction, unit: str, written: str, ends: tuple[Fraction, Fraction] | None = None) -> Span | None:
    """The span of a figure, or of a range with both ends; None where the unit is not on the list."""
    row = unit_rows().get(unit)
    if row is None:
        return None
    base = BASE.get(row.unit.kind, unit)
    low, high = ends or (value, value)
    slack = _slack(value, written)
    try:
        edges = [float(to_unit(one, unit, base)) for one in (low - slack, high + slack)]
    except UnitError:
        return None
    return Span(row.unit.kind, min(edges), max(edges))


def _slack(value: Fraction, written: str) -> Fraction:
    """Half a step of a figure as written: 0.05 for "2.4"; next to nothing for a fraction."""
    said = fineness(written)
    if said.below:
        return abs(value) * _HAIR
    return min(Fraction(1, 2 * 10**said.decimals), abs(value) * _WIDE)
