"""What figures of one thing come to: how many, the middle one, the least and the most, in both systems of units."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from extract.record import Phase
from publish.context.reference import Tally
from publish.library.common import Ends, Scale, middle
from publish.wording import PHASES

_ALL = "all"


def tallies_of(counted: Sequence[tuple[Phase, Ends]], scale: Scale) -> tuple[Tally, ...]:
    """By phase, and over all where there are several."""
    by_phase = [(name, [ends for one, ends in counted if one == phase]) for phase, name in PHASES.items()]
    present = [(name, of) for name, of in by_phase if of]
    if len(present) > 1:
        present.append((_ALL, [ends for _, ends in counted]))
    return tuple(tally_of(name, of, scale) for name, of in present)


def tally_of(phase: str, of: Sequence[Ends], scale: Scale) -> Tally:
    """Of one figure at least; of a range both ends count for least and most, its middle for the median."""
    mid = scale.told(middle(one.value for one in of))
    least, most = min((one.low for one in of), key=float), max((one.high for one in of), key=float)
    span, span_other = between(least, most, scale)
    return Tally(phase, len(of), *mid, span, span_other)


def between(least: Fraction, most: Fraction, scale: Scale) -> tuple[str, str]:
    """From the least to the most, and the same in the other system."""
    low, high = scale.told(least), scale.told(most)
    if low == high:
        return low
    own, other = (f"{one} to {two}" if one and two else "" for one, two in zip(low, high, strict=True))
    return own, other
