"""A figure and what it should have been, in units of two kinds.

Takes "the coil reads 40 centimetres when it should be forty ohms" and "9 volts instead of 40 grams"; refuses "the bolt
is 5 mm and its torque should be 8 newton metres" and "it weighs 40 grams, and should be 20 mm long".
Source: NIST SP 811 (2008) chapter 7: a quantity keeps its kind.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.checks.finding import Suspicion
from extract.checks.talk import Said, Talk
from extract.checks.units import SOURCE, allowed
from extract.checks.vocabulary import check_words, holds

_FEW = 7
_LENGTH = ("long", "wide", "deep", "thick", "tall", "high", "across", "apart", "away", "of")


def find_contrasts(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that is said to be another of a kind that it can't be."""
    for second in talk.said:
        first = talk.previous(second)
        if first is None or not _can_be_held_together(first, second) or not _is_contrasted(second):
            continue
        message = f"{first.measure.display} and {second.measure.display} are said of one thing, but differ in kind"
        yield Suspicion("dimension", "stop", (_odd_one(talk, first, second).measure,), message, SOURCE)


def _odd_one(talk: Talk, first: Said, second: Said) -> Said:
    """The one whose kind is said nowhere else; of equals what is to be."""
    kinds = [one.measure.kind for one in talk.said]
    return first if kinds.count(first.measure.kind) <= kinds.count(second.measure.kind) else second


def _can_be_held_together(first: Said, second: Said) -> bool:
    kinds = [one.measure.kind for one in (first, second)]
    if None in kinds or not (first.measure.unit_said and second.measure.unit_said) or second.after[:1] in _BEHIND:
        return False
    return not any(other in allowed(frozenset({kind}), kind) for kind, other in (kinds, kinds[::-1]) if kind and other)


def _is_contrasted(second: Said) -> bool:
    """Little more than "when it should be" or "instead of" stands between the two."""
    words, vocabulary = second.before, check_words()
    found = holds(words, vocabulary.contrast) if len(words) <= _FEW else None
    return found is not None and {*words} - {*found} <= vocabulary.contrast_between


_BEHIND = tuple((word,) for word in _LENGTH)
