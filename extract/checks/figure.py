"""A figure with how precisely it was said.

Takes "27 3/16" as said to a sixteenth, "0.080" to a thousandth and "600" to one, or to a hundred where it is hedged.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

_FIGURE = re.compile(
    r"(?P<sign>[-−]?)"
    r"(?:(?:(?P<whole>\d+)[ -])?(?P<top>\d+)/(?P<bottom>\d+)|(?P<digits>\d[\d,]*)?(?:\.(?P<decimals>\d+))?)"
)


@dataclass(frozen=True, slots=True)
class Figure:
    """A value and one unit in its last place as said: `step` is 1/16 for "3/16", 0.01 for "2.50", 1 for "600"."""

    value: Fraction
    step: Fraction
    fraction: bool = False
    """Said as a fraction or a mixed number."""
    hedged: bool = False

    @property
    def half(self) -> Fraction:
        """Half a unit in the last place: how far the truth may lie from a figure rounded to it."""
        return self.step / 2

    @property
    def loose_half(self) -> Fraction:
        """The same where the trailing zeros of a hedged integer, or the 5 of a hedged "3.5", say little."""
        if self.fraction or not self.hedged or self.value == 0:
            return self.half
        if self.step == Fraction(1, 10) and (self.value * 2).denominator == 1:
            return Fraction(1, 4)
        step = self.step
        while step >= 1 and (self.value / (step * 10)).denominator == 1:
            step *= 10
        return step / 2

    @property
    def digits(self) -> int:
        """Significant digits as said: 2 for "0.010", 3 for "150"; a fraction counts as the decimal of its precision."""
        return len(str(round(abs(self.value) / decimal_step(self.step))))


def decimal_step(step: Fraction) -> Fraction:
    """The power of ten that is no coarser than a step: 0.1 for 1/8, 0.01 for 1/16."""
    power = Fraction(1)
    while power > step:
        power /= 10
    return power


def parse_figure(text: str, hedged: bool = False) -> Figure:
    """The figure at the start of a text such as "1 3/8 in" or "1,200 mm". Raises `ValueError` where there is none."""
    found = _FIGURE.match(text.strip())
    if found is None or not found.group().strip("-−"):
        raise ValueError(f"no figure in {text!r}")
    sign = -1 if found["sign"] else 1
    if found["bottom"]:
        bottom = int(found["bottom"])
        return Figure(
            sign * (int(found["whole"] or 0) + Fraction(int(found["top"]), bottom)), Fraction(1, bottom), True, hedged
        )
    decimals = found["decimals"] or ""
    value = Fraction(f"{(found['digits'] or '0').replace(',', '')}.{decimals or '0'}")
    return Figure(sign * value, Fraction(1, 10 ** len(decimals)), False, hedged)
