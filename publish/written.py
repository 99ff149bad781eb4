"""How finely a record's figure was said, read off its written form.

Takes "3 5/64 in" as said to a 64th, "0.100 in" to a thousandth; the record keeps figures as floats, and these two give
back what they stand for.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

_FINEST = 10**6
_FIGURE = re.compile(r"(?:\d+ )?\d+/(?P<below>\d+)|\d+\.(?P<decimals>\d+)|\d+")


@dataclass(frozen=True, slots=True)
class Fineness:
    """The last places of a written figure; of several the finest."""

    below: int
    """Largest denominator; 0 where no fraction is written."""
    decimals: int
    """Most decimals; 0 where none are written."""


def fineness(*written: str) -> Fineness:
    """The last places of the figures in these texts."""
    found = [one for text in written for one in _FIGURE.finditer(text.replace("\N{NO-BREAK SPACE}", " "))]
    return Fineness(
        below=max((int(one["below"]) for one in found if one["below"]), default=0),
        decimals=max((len(one["decimals"]) for one in found if one["decimals"]), default=0),
    )


def exact(value: float) -> Fraction:
    """The figure that a record's float stands for: 0.012 is 3/250, 0.3333333333333333 is 1/3."""
    return Fraction(repr(value)).limit_denominator(_FINEST)
