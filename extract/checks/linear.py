"""The way from one unit into another as a straight line, so that spans can be converted as well as figures."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from extract.units import UnitError, to_unit

_FLOOR = {"degC": Fraction(60), "degF": Fraction(108)}
"""Errors of a temperature are judged against no less than this: a ratio to a zero that people chose says nothing."""


@dataclass(frozen=True, slots=True)
class Linear:
    """`exact = value * factor + offset`."""

    factor: Fraction
    offset: Fraction = Fraction(0)
    floor: Fraction = Fraction(0)
    """The least magnitude, in the unit converted to, that an error is held against."""

    def __call__(self, value: Fraction) -> Fraction:
        """The exact conversion of a value."""
        return value * self.factor + self.offset

    @property
    def whole(self) -> bool:
        """One unit holds a whole number of the other, as a foot holds inches: nobody rounds on that way."""
        return self.offset == 0 and 1 in (self.factor.numerator, self.factor.denominator)

    @property
    def inverse(self) -> Linear:
        """The way back."""
        return Linear(1 / self.factor, -self.offset / self.factor, self.floor / abs(self.factor))


SAME = Linear(Fraction(1))
"""From a unit into itself."""


@cache
def conversion(unit: str, to: str, difference: bool = False) -> Linear | None:
    """How to get from one unit to another, exactly; None where they measure different things.

    A `difference` of temperatures has no offset: 18 °F warmer is 10 °C warmer.
    """
    try:
        zero, one = to_unit(Fraction(0), unit, to), to_unit(Fraction(1), unit, to)
    except UnitError:
        return None
    if difference:
        return Linear(one - zero)
    return Linear(one - zero, zero, _FLOOR.get(to, Fraction(0)))
