"""Measures said long ago, found again by value ("33.35" behind "32.8 rpm") or by what is named before both."""

from __future__ import annotations

from bisect import bisect_left, insort
from fractions import Fraction

from extract.quantities.draft import Draft

_TELLING = 20
"""A value this large that comes again is the same measure, however long ago."""
_CLOSE = Fraction(3, 100)
_DIGITS = 3
"""A figure of so many digits, not all of them round, is told by a value close to it."""


class Recall:
    """The measures so far, by value."""

    def __init__(self) -> None:
        self._values: list[Fraction] = []
        self._by_value: dict[Fraction, Draft] = {}
        self._by_attribute: dict[str, Draft] = {}

    def keep(self, draft: Draft, attributes: frozenset[str] = frozenset()) -> None:
        """Remember a measure, with the attributes named right before it; the last of a value or attribute counts."""
        self._by_attribute.update(dict.fromkeys(attributes, draft))
        value = abs(draft.number.value)
        if value < _TELLING:
            return
        if value not in self._by_value:
            insort(self._values, value)
        self._by_value[value] = draft

    def told(self, attributes: frozenset[str]) -> Draft | None:
        """The last measure before which one of the attributes was named too."""
        return next((self._by_attribute[name] for name in sorted(attributes) if name in self._by_attribute), None)

    def like(self, draft: Draft) -> Draft | None:
        """The last measure of the same value, or the one closest to a figure of three digits."""
        value = abs(draft.number.value)
        if value in self._by_value or not _is_precise(draft):
            return self._by_value.get(value)
        place = bisect_left(self._values, value)
        beside = self._values[max(0, place - 1) : place + 1]
        close = [one for one in beside if abs(one - value) <= value * _CLOSE]
        return self._by_value[min(close, key=lambda one: abs(one - value))] if close else None


def _is_precise(draft: Draft) -> bool:
    number = draft.number
    digits = str(abs(number.value.numerator * 10 ** (number.decimals or 0) // number.value.denominator))
    return len(digits.rstrip("0")) >= _DIGITS and number.value >= _TELLING
