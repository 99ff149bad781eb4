"""The figures of one sum."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from extract.checks.talk import Said

PARTS = {
    "half": Fraction(1, 2),
    "a third": Fraction(1, 3),
    "two thirds": Fraction(2, 3),
    "a quarter": Fraction(1, 4),
    "three quarters": Fraction(3, 4),
    "a fifth": Fraction(1, 5),
    "a sixth": Fraction(1, 6),
    "an eighth": Fraction(1, 8),
    "a tenth": Fraction(1, 10),
}
"""Parts of a whole as they are said."""


@dataclass(frozen=True, slots=True)
class Terms:
    """What is worked with, and what was said to come of it."""

    operands: tuple[Said, ...]
    result: Said
    count: int = 1
    """A small count: 3 for "three gaps"."""
    period: str = ""
    """The period of a rate: "day" for "four minutes a day"."""

    over: str = ""
    """The one period that the rate is said for: "week" for "in a week"."""
    part: str = ""
    """A part of the whole, as in `PARTS`."""
    factor: Fraction = Fraction(1)
    """A factor that is no whole number: 1.4 for "1.4 times that"."""

    @property
    def first(self) -> Said:
        """The first operand."""
        return self.operands[0]

    @property
    def second(self) -> Said:
        """The second operand, or the only one."""
        return self.operands[min(1, len(self.operands) - 1)]
