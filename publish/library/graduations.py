"""Where the graduations of a scale stand: steps of 1, 2 or 5 by a power of ten, or halves as on a rule."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor, log2, log10

from extract.display import show_number
from extract.spans import Number

_MOST = 6
_FINEST = Fraction(1, 64)


@dataclass(frozen=True, slots=True)
class Graduated:
    """A scale from `low` to `high`, both graduations, with all those between."""

    low: float
    high: float
    step: Fraction
    halved: bool = False
    """The numbers are fractions, as on an inch rule."""

    def marks(self) -> tuple[tuple[float, str], ...]:
        """Each graduation with its number."""
        first, last = round(self.low / float(self.step)), round(self.high / float(self.step))
        return tuple((float(at * self.step), self._written(at * self.step)) for at in range(first, last + 1))

    def _written(self, value: Fraction) -> str:
        if self.halved:
            return show_number(value, Number(0, 0, value, "fraction"))
        return f"{float(value):.{max(0, -floor(log10(self.step)))}f}"

    def part(self, value: float) -> float:
        """How far along the scale a figure lies, from 0 to 1."""
        return (value - self.low) / (self.high - self.low)


def graduate(values: Iterable[float], *, halved: bool = False) -> Graduated:
    """A scale of about six steps that holds all these figures; where `halved`, steps below one are those of a rule."""
    sizes = list(values)
    low, high = min(sizes), max(sizes)
    if low == high:
        room = abs(low) / 4 or 1.0
        low, high = low - room, high + room
    least = (high - low) / _MOST
    halved = halved and least <= 0.5
    step = _half(least) if halved else _step(least)
    return Graduated(float(floor(low / step) * step), float(ceil(high / step) * step), step, halved)


def _step(least: float) -> Fraction:
    power = Fraction(10) ** floor(log10(least))
    return next(times * power for times in (1, 2, 5, 10) if float(times * power) >= least)


def _half(least: float) -> Fraction:
    return max(Fraction(2) ** ceil(log2(least)), _FINEST)
