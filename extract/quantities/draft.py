"""What the rules of this stage hand one another."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from extract.spans import Number, Unit


@dataclass(frozen=True, slots=True)
class Draft:
    """A number on its way to a quantity; `start` and `end` count lexemes and take in the unit."""

    start: int
    end: int
    number: Number
    unit: Unit | None
    said: str = ""
    """The unit's form as said, empty where it was left out."""
    grouped: bool = False
    """Said as groups of digits, as years are."""
    compound: bool = False
    """Made of two figures: "five foot two"."""
    translated: bool = False
    """Says the measure before it again in the other system."""

    @property
    def ends(self) -> tuple[Fraction, Fraction]:
        """Lowest and highest value."""
        low, high = self.number.low, self.number.high
        return (self.number.value if low is None else low, self.number.value if high is None else high)
