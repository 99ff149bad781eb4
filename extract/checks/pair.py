"""Two figures said one after the other, of one kind, and the words about them as one line that a pattern can read."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from extract.checks.finding import Suspicion
from extract.checks.linear import conversion
from extract.checks.talk import Said, Talk
from extract.record import COMMON, Severity

WORD = r"(?:[^<>.\s]+ )"
"""Any one word of the same sentence."""
HEDGE = r"(?:(?:about|around|nearly|roughly|just|almost|over|under|maybe|say) ){0,2}"
_BEHIND = 5


@dataclass(frozen=True, slots=True)
class Pair:
    """`text` reads "the saddle from <a> down to <b> today "; a "." stands where a sentence ends between the two."""

    first: Said
    second: Said
    text: str
    a: Fraction
    b: Fraction
    """Both values in the unit of the second."""

    def suspect(self, kind: str, severity: Severity, message: str, source: str = COMMON) -> Suspicion:
        """A suspicion of the two figures."""
        return Suspicion(kind, severity, (self.first.measure, self.second.measure), message, source)


def pairs(talk: Talk) -> Iterator[Pair]:
    """Each figure with the one said just before it, where both are single figures that can be compared."""
    for second in talk.said:
        first = talk.previous(second)
        if first is None or any(len(one.figures) > 1 or one.measure.difference for one in (first, second)):
            continue
        convert = conversion(first.measure.unit or "", second.measure.unit or "")
        if convert is None or first.measure.kind != second.measure.kind:
            continue
        earlier = second.before[: len(second.before) - len(second.clause)]
        border = (".",) if earlier or not first.after else ()
        words = (*first.clause, "<a>", *earlier, *border, *second.clause, "<b>", *second.after[:_BEHIND])
        yield Pair(first, second, " ".join(words) + " ", convert(first.figure.value), second.figure.value)
