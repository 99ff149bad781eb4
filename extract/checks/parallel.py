"""Two figures of a pair, one like the other, in units of two kinds.

Takes "142 ohms on the one side and 155 volts on the other" and "3.1 mm front, 3.4 grams back"; refuses "12 volts on the
left and 3 amps on the right", whose figures are nothing like one another, and "4 mm wide at the top, 4 degrees off at
the bottom". Source: the narration itself; what is told of both of a pair is of one kind.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import cache

from extract.checks.finding import Suspicion
from extract.checks.said_in import words_for
from extract.checks.talk import Said, Talk
from extract.checks.units import SOURCE, allowed
from extract.checks.vocabulary import Phrase

_TABLE = "parallel"
_ALIKE = Fraction(3, 2)
"""Times that the two figures of a pair may differ."""
_FEW = 9


def find_unlike(talk: Talk) -> Iterator[Suspicion]:
    """Each second figure of a pair that is of another kind than the first, though nearly as large."""
    for second in talk.said:
        first = talk.previous(second)
        if first is not None and _may_be_a_pair(first, second) and _is_told_of_both(second):
            odd, other = _odd_one(talk, first, second)
            message = f"{odd.measure.display} and {other.measure.display} are told of a pair, but differ in kind"
            yield Suspicion("dimension", "stop", (odd.measure,), message, SOURCE)


def _may_be_a_pair(first: Said, second: Said) -> bool:
    one, other = first.measure, second.measure
    if not (one.unit_said and other.unit_said and one.kind and other.kind) or len(second.before) > _FEW:
        return False
    kinds = frozenset({one.kind}), frozenset({other.kind})
    if other.kind in allowed(kinds[0], one.kind) or one.kind in allowed(kinds[1], other.kind):
        return False
    low, high = sorted((first.figure.value, second.figure.value))
    return low > 0 and high <= low * _ALIKE


def _is_told_of_both(second: Said) -> bool:
    """The first of a pair is named behind the first figure, the second behind the second, and little else between."""
    for here, there in _pairs():
        if second.before[: len(here)] == here and second.after[: len(there)] == there:
            return {*second.before[len(here) :]} <= words_for(_TABLE, "between")
    return False


def _odd_one(talk: Talk, first: Said, second: Said) -> tuple[Said, Said]:
    """The one whose kind is said less often in the talk comes first; of equals the second."""
    kinds = [one.measure.kind for one in talk.said]
    if kinds.count(first.measure.kind) < kinds.count(second.measure.kind):
        return first, second
    return second, first


@cache
def _pairs() -> tuple[tuple[Phrase, Phrase], ...]:
    """The longest first."""
    found = []
    for row in words_for(_TABLE, "pairs"):
        here, there = row.split(" / ")
        found.append((tuple(here.split()), tuple(there.split())))
    return tuple(sorted(found, key=lambda pair: (-len(pair[0]), pair)))
