"""Other ways in which the same figures give a result: each of these clears a sum that is doubted.

Takes "15 mm copper with a wall of 0.7, so the hole's 13.6" (both walls) and "12 wide, about half an inch, the coil is
9, so one and a half a side" (half of what is left of the 12); refuses "15 less 0.7, that's 12.6", which neither way
gives. Source: arithmetic.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import permutations, product

from extract.checks.agreement import agreement
from extract.checks.arithmetic.work import in_unit
from extract.checks.finding import Suspicion
from extract.checks.linear import conversion
from extract.checks.said_in import words_for
from extract.checks.talk import Said, Talk

_BEHIND = 4


def comes_out_otherwise(talk: Talk, doubted: Suspicion) -> bool:
    """Two of the figures give the result exactly, one of them counted twice or the difference halved, as words say."""
    *operands, result = (talk.by_id[one.id] for one in doubted.measures)
    if len(operands) != 2 or any(one.measure.kind != result.measure.kind for one in operands):
        return False
    words = {word for one in (*operands[1:], result) for word in (*one.before, *one.after[:_BEHIND])}
    if not words & words_for("otherwise", "twice"):
        return False
    values = [list(_values(talk, one, result.measure.unit)) for one in operands]
    return any(result.figure.value in _ways(first, second) for first, second in product(*values))


def _ways(first: Fraction, second: Fraction) -> Iterator[Fraction]:
    yield abs(first - second) / 2
    for one, other in permutations((first, second)):
        yield from (one - 2 * other, one + 2 * other)


def _values(talk: Talk, one: Said, unit: str | None) -> Iterator[Fraction]:
    """The figure, and one right beside it that says the same in another unit."""
    fellows = (talk.by_place.get(one.place + step) for step in (-1, 1))
    for said in (one, *(other for other in fellows if other is not None and _says_the_same(other, one))):
        value = in_unit(said, unit)
        if value is not None:
            yield value


def _says_the_same(other: Said, one: Said) -> bool:
    convert = conversion(other.measure.unit or "", one.measure.unit or "")
    if convert is None or other.measure.unit == one.measure.unit:
        return False
    return agreement(other.figure, one.figure, convert) != "disagrees"
