"""Whether a figure lies outside every band that the trade has for what was just named."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from capture.figures import parts_of
from extract.checks.linear import Linear, conversion
from extract.trade import Band, Trade

NEAR = 16
"""Words before a figure among which the attribute may be named."""


def outside(value: Fraction, unit: str, before: Sequence[str], trade: Trade) -> bool:
    """True for a figure outside all bands of the attribute that was named last before it; false where none was.

    Takes an "action" of five sixteenths of an inch on a guitar; lets one of five sixty-fourths pass.
    """
    words = [part for word in before[-NEAR:] for part in parts_of(word)]
    best = -1
    bands: tuple[tuple[Band, Linear], ...] = ()
    for attribute in trade.attributes:
        place = max((_last(words, tuple(parts_of(said))) for said in attribute.said), default=-1)
        usable = tuple((band, way) for band in attribute.bands if (way := conversion(unit, band.unit)) is not None)
        if place > best and usable:
            best, bands = place, usable
    return bool(bands) and not any(band.low <= way(value) <= band.high for band, way in bands)


def _last(words: Sequence[str], name: tuple[str, ...]) -> int:
    """Where a name was said last among words; -1 where it was not."""
    return next((at for at in range(len(words) - len(name), -1, -1) if tuple(words[at : at + len(name)]) == name), -1)
