"""Exact conversion between units.

Factors come from pint's registry, held as fractions: an inch is 127/5 mm (24 FR 5348, 1959), a pound 0.45359237 kg, a
pound-force 4.4482216152605 N. Nothing that was said is ever parsed by pint, only unit names of our own list.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

import pint

_FLOOR_CELSIUS = 60
"""Errors of a temperature are judged against no less than 60 °C: a ratio to a zero that people chose says nothing."""


@dataclass(frozen=True, slots=True)
class Linear:
    """`exact = value * factor + offset`."""

    factor: Fraction
    offset: Fraction = Fraction(0)
    floor: Fraction = Fraction(0)
    """The least magnitude, in the unit converted to, that an error is held against."""

    def __call__(self, value: Fraction) -> Fraction:
        return value * self.factor + self.offset

    @property
    def whole(self) -> bool:
        """One unit holds a whole number of the other, as a foot holds inches: nobody rounds on that way."""
        return self.offset == 0 and 1 in (self.factor.numerator, self.factor.denominator)

    @property
    def inverse(self) -> Linear:
        """The way back."""
        return Linear(1 / self.factor, -self.offset / self.factor, self.floor / abs(self.factor))


@cache
def _registry() -> pint.UnitRegistry[Fraction]:
    return pint.UnitRegistry(non_int_type=Fraction)


@cache
def conversion(unit: str, to: str, difference: bool = False) -> Linear | None:
    """How to get from one unit to another, exactly; None where they measure different things.

    A `difference` of temperatures has no offset: 18 °F warmer is 10 °C warmer.
    """
    registry = _registry()
    try:
        source, goal = registry.Unit(unit), registry.Unit(to)
        if source.dimensionality != goal.dimensionality:
            return None
        offset = Fraction(registry.Quantity(Fraction(0), source).to(goal).magnitude)
        factor = Fraction(registry.Quantity(Fraction(1), source).to(goal).magnitude) - offset
    except (pint.UndefinedUnitError, pint.DimensionalityError, ValueError, AttributeError):
        return None
    temperature = "degF" in (unit, to) or "degC" in (unit, to)
    if difference:
        offset = Fraction(0)
    floor = (
        Fraction(_FLOOR_CELSIUS) * (Fraction(9, 5) if to == "degF" else 1)
        if temperature and not difference
        else Fraction(0)
    )
    return Linear(factor, offset, floor)
