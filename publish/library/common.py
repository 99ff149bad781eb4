"""Figures of one thing in one unit, converted exactly.

Takes 5/64 in and 2 mm as inches; a figure that has no unit, or one of another kind, has no place among them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Protocol

from extract.convert import quantity_in_other_system
from extract.display import show_number, with_symbol
from extract.record import Phase
from extract.spans import Limit, Number, Quantity
from extract.units import UnitError, to_unit, unit_named, unit_rows
from publish.written import exact, fineness

_FINEST_FRACTION = 128


class Measured(Protocol):
    """A figure with its unit, of a record or out of a store."""

    @property
    def attribute(self) -> str | None:
        """What is measured."""

    @property
    def item(self) -> str | None:
        """Of what."""

    @property
    def kind(self) -> str | None:
        """Kind of its unit."""

    @property
    def phase(self) -> Phase:
        """As found, aimed at, as left, or a rule of thumb."""

    @property
    def limit(self) -> Limit | None:
        """Which side is given only."""

    @property
    def unit(self) -> str | None:
        """Its unit; null where nothing settles it."""

    @property
    def value(self) -> float:
        """In its unit."""

    @property
    def low(self) -> float | None:
        """The lower end of a range."""

    @property
    def high(self) -> float | None:
        """The upper end of a range."""

    @property
    def display(self) -> str:
        """As it was written."""


@dataclass(frozen=True, slots=True)
class Ends:
    """A figure in the common unit; a single figure's ends are the same."""

    value: Fraction
    low: Fraction
    high: Fraction


@dataclass(frozen=True, slots=True)
class Scale:
    """The unit that figures are put in, and how finely they were said in it."""

    unit: str
    below: int
    """Largest denominator said; 0 where none was."""
    decimals: int
    """Most decimals said."""

    def ends(self, measure: Measured) -> Ends | None:
        """A figure in the unit, exactly; None where it can't be turned into it."""
        if measure.unit is None or measure.unit not in unit_rows():
            return None
        try:
            value = _in_unit(measure.value, measure.unit, self.unit)
            low, high = (
                value if end is None else _in_unit(end, measure.unit, self.unit) for end in (measure.low, measure.high)
            )
        except UnitError:
            return None
        return Ends(value, low, high)

    def told(self, value: Fraction) -> tuple[str, str]:
        """A worked-out figure with its unit, and the same in the other system; that is empty where there is none."""
        unit, number = unit_named(self.unit), self._number(value)
        quantity = Quantity(
            start=0, end=0, value=value, low=None, high=None, unit=unit, unit_said=True, number=number, hedged=False
        )
        return with_symbol(show_number(value, number), unit, value), quantity_in_other_system(quantity) or ""

    def _number(self, value: Fraction) -> Number:
        if self.below and value.denominator <= _FINEST_FRACTION and value.denominator & (value.denominator - 1) == 0:
            below = max(self.below, value.denominator)
            return Number(0, 0, value, "fraction", denominator=below)
        # The middle of two figures, or a converted one, falls between the last places that were said: one place more.
        between = (value * 10**self.decimals).denominator != 1
        decimals = max(self.decimals + between, 3 if self.below else 0)
        return Number(0, 0, value, "decimal" if decimals else "integer", decimals=decimals or None)


def middle(values: Iterable[Fraction]) -> Fraction:
    """The median, exact; put in order as floats, which takes a fraction of the time that `Fraction`s do."""
    ordered = sorted(values, key=float)
    half = len(ordered) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2


@lru_cache(maxsize=1 << 14)
def _in_unit(value: float, unit: str, other: str) -> Fraction:
    """The same figures come again from session to session."""
    return to_unit(exact(value), unit, other)


def common_scale(measures: Iterable[Measured]) -> Scale | None:
    """The unit that most figures were said in, the first of equals; None where none has a unit of the list."""
    known = unit_rows()
    kept = [(one.unit, one.display) for one in measures if one.unit is not None and one.unit in known]
    if not kept:
        return None
    unit = Counter(unit for unit, _ in kept).most_common(1)[0][0]
    said = fineness(*(told for other, told in kept if other == unit))
    return Scale(unit, said.below, said.decimals)
