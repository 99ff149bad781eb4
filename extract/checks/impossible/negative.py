"""A size below nothing.

Takes "minus 3 mm deep" and a thickness of minus 2 mm; refuses "5 minus 2 mm thick", a tolerance of "plus 0 minus 2" and
a temperature below zero. Source: a size is never negative.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.checks.finding import Suspicion
from extract.checks.said_in import words_for
from extract.checks.talk import Said, Talk

SOURCE = "a size is never negative"
_TABLE = "negative"
_FEW = 3


def find_negative(talk: Talk) -> Iterator[Suspicion]:
    """Each negative length or weight that the words make a size."""
    for one in talk.said:
        measure = one.measure
        if measure.kind in ("length", "mass") and one.figure.value < 0 and _is_a_size(talk, one):
            message = f"{measure.display} is less than nothing, which no size can be"
            yield Suspicion("implausible", "stop", (measure,), message, SOURCE)


def _is_a_size(talk: Talk, one: Said) -> bool:
    if one.measure.difference or one.measure.tolerance or words_for(_TABLE, "refused") & {*one.clause, *one.after[:2]}:
        return False
    if not one.before and talk.previous(one) is not None:
        return False
    named = any(word in words_for(_TABLE, "nouns") for word in one.clause[-_FEW:])
    return named or (bool(one.after[:1]) and one.after[0] in words_for(_TABLE, "sizes"))
