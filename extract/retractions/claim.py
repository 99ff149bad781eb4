"""What a talk says that an earlier session said: the figure, the thing it is of, the session that is named.

Takes "In the first film, I told you to set the heat blanket to 180 °F" as 180 °F, the temperature of the blanket, in
the first session.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise

from extract.record import Correction, Measure, Record
from extract.retractions.knowledge import knowledge, telling
from extract.units import UnitError, to_unit, unit_rows

_FINEST = 10**6
_WORD = re.compile(r"[\w'’-]+")


@dataclass(frozen=True, slots=True)
class Claim:
    """A correction of scope earlier_session, looked through."""

    correction: Correction
    wrong: Measure | None
    """The figure as this talk says it again; null for a statement without one."""
    right: Measure | None
    """The figure that holds instead."""
    words: frozenset[str]
    """Words that tell what is meant, the figure's own left out."""
    named: str
    """Which session is named: "first", "last", or "" where the talk names none by its place."""
    around: frozenset[str]
    """Words beside "film", which may name the instrument: "the viola film"."""

    @property
    def kind(self) -> str | None:
        """Kind of figure: length, temperature ...; null for a statement without one."""
        return next((one.kind for one in (self.wrong, self.right) if one is not None and one.kind), None)


def claim_of(record: Record, correction: Correction) -> Claim:
    """The claim in a correction of its record."""
    measures = {one.id: one for one in record.measures}
    wrong = measures.get(correction.withdraws.measure or "")
    right = measures.get(correction.replacement_measure or "")
    before = wrong.before if wrong else ""
    naming = f"{before} {correction.withdraws.text}"
    names = [name for one in (wrong, right) if one for name in (one.attribute, one.item, one.where)]
    words = telling(correction.withdraws.text, before, wrong.after if wrong else "", *names)
    figures = telling(*(one.quote for one in (wrong, right) if one))
    spoken = [word.casefold() for word in _WORD.findall(naming)]
    return Claim(correction, wrong, right, words - figures, _named(spoken), _around(spoken))


def same_figure(one: Measure, other: Measure) -> bool:
    """Both say the same figure, exactly; in other units only where the conversion comes out even."""
    known = unit_rows()
    if one.unit not in known or other.unit not in known:
        return one.value == other.value and one.low == other.low and one.high == other.high
    try:
        ends = [
            (_exact(a), _in_unit(b, other.unit, one.unit))
            for a, b in ((one.value, other.value), (one.low, other.low), (one.high, other.high))
            if a is not None and b is not None
        ]
    except UnitError:
        return False
    return (one.low is None) == (other.low is None) and all(a == b for a, b in ends)


@lru_cache(4096)
def _exact(value: float) -> Fraction:
    return Fraction(repr(value)).limit_denominator(_FINEST)


@lru_cache(4096)
def _in_unit(value: float, unit: str, other: str) -> Fraction:
    return to_unit(_exact(value), unit, other)


def _named(spoken: list[str]) -> str:
    known = knowledge()
    for word, after in pairwise(spoken):
        if after in known.shows and word in known.first | known.last:
            return "first" if word in known.first else "last"
    return ""


def _around(spoken: list[str]) -> frozenset[str]:
    shows = knowledge().shows
    beside = (" ".join(spoken[max(0, at - 2) : at + 4]) for at, word in enumerate(spoken) if word in shows)
    return telling(*beside)
