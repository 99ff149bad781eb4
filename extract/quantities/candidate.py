"""A unit that a bare number may have, and why."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from extract.quantities.draft import Draft
from extract.quantities.knowledge import knowledge
from extract.spans import Unit

Reasons = dict[str, float]
"""What speaks for or against, by name, with how strongly; data/evidence.toml has a weight for each name."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """A unit and what speaks for it."""

    unit: Unit
    reasons: Mapping[str, float]
    denominator: int | None = None
    """Given where the number is a count of parts: the "seven" of "nine sixty-fourths here and seven there"."""
    divisor: int = 1
    """What the number is divided by in that unit: ten for tenths of a thousandth."""

    @property
    def score(self) -> float:
        """All reasons, weighted and added up."""
        return weigh(self.reasons)


@dataclass(frozen=True, slots=True)
class Neighbours:
    """What stands around a bare number."""

    before: list[Draft]
    """The last measures, units settled, in order."""
    again: Draft | None
    """The last measure of the same value, or of what is named right before, however long ago. Small values come again
    by chance, and are not looked for."""
    last: Draft | None
    """The number right before, where it is a measure."""
    after: list[Draft]
    """The numbers that follow."""
    counted: Draft | None = None
    """The number right before, where it is a whole one and no measure."""


def weigh(reasons: Mapping[str, float]) -> float:
    """The weighted sum of reasons. Raises `KeyError` for a reason that the data file does not weigh."""
    weights = knowledge().evidence.weights
    return sum(weights[name] * strength for name, strength in reasons.items())
