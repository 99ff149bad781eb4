"""A change that goes the other way than its words say.

Takes "lowered the action from 5/64 to 7/64", "raised it from 9 mm to 7 mm", "from 5 mm down to 7 mm" and "thinned it
from 2.5 to 2.8 mm"; refuses "from the 5 mm mark down to the 7 mm one", "lowered the saddle, so the gap went from 2
to 3 mm", "scraped it from 5 mm to 20 mm in from the edge" and what is said not to be so. Source: the words themselves.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from extract.checks.finding import Suspicion
from extract.checks.pair import HEDGE, Pair, pairs
from extract.checks.said_in import either, holding, words_for
from extract.checks.talk import Talk

SOURCE = "the narration itself: the words and the figures go opposite ways"
_TABLE = "direction"
_BEFORE, _BEHIND = 3, 3
"""Words about a change among which another word may turn it round."""
_FAR = Fraction(4)
"""Figures further apart than this are of two things, or one has lost its unit."""


@dataclass(frozen=True, slots=True)
class _Way:
    """How it is said that something grows less, or more."""

    said: str
    there: tuple[re.Pattern[str], ...]
    """From the first figure to the second."""
    back: tuple[re.Pattern[str], ...]
    """To the first from the second."""

    @classmethod
    def of(cls, said: str, towards: str) -> _Way:
        verb = rf"\b{either(_TABLE, towards)} (?:(?!{either(_TABLE, 'not_object')}\b)[^<>.\s]+ ){{0,5}}"
        any_way = "(?:down |up |back )?"
        return cls(
            said,
            (
                re.compile(rf"{verb}from {HEDGE}<a> {any_way}to {HEDGE}<b>"),
                re.compile(rf"\bfrom {HEDGE}<a> (?:right |all the way )?{towards} to {HEDGE}<b>"),
            ),
            (
                re.compile(rf"{verb}{any_way}to {HEDGE}<a> from {HEDGE}<b>"),
                re.compile(rf"\b{towards} to {HEDGE}<a> from {HEDGE}<b>"),
            ),
        )


@cache
def _ways() -> tuple[_Way, ...]:
    return _Way.of("less", "down"), _Way.of("more", "up")


def find_reversed(talk: Talk) -> Iterator[Suspicion]:
    """Each pair of figures that goes up where the words say down, or down where they say up."""
    for pair in pairs(talk):
        if (
            pair.second.measure.kind in words_for(_TABLE, "kinds")
            and pair.a > 0
            and pair.b > 0
            and not _is_of_places(pair)
        ):
            found = _judge(pair)
            if found is not None:
                yield found


def _is_of_places(pair: Pair) -> bool:
    behind = pair.second.after[:1]
    return bool(behind and behind[0] in words_for(_TABLE, "place")) or pair.second.after[:2] == ("in", "from")


def _judge(pair: Pair) -> Suspicion | None:
    hedged = pair.first.measure.hedged or pair.second.measure.hedged
    if not 1 / _FAR < pair.a / pair.b < _FAR or pair.a == pair.b or (hedged and _is_close(pair)):
        return None
    rises = pair.b > pair.a
    for way in _ways():
        less = way.said == "less"
        if rises == less and _says(pair, way.there):
            return _suspect(pair, way.said)
        if rises != less and _says(pair, way.back):
            return _suspect(pair, way.said, turned=True)
    return None


def _says(pair: Pair, ways: tuple[re.Pattern[str], ...]) -> bool:
    found = (pattern.search(pair.text) for pattern in ways)
    return any(one is not None and not _is_refused(pair.text, one) for one in found)


def _is_refused(text: str, said: re.Match[str]) -> bool:
    """Words in it, or just before and behind it, say that it is not so, or that less is more: a drop, a gauge."""
    before, behind = text[: said.start()].split()[-_BEFORE:], text[said.end() :].split()[:_BEHIND]
    return holding(_TABLE, "refused").search(" ".join((*before, said.group(), *behind))) is not None


def _is_close(pair: Pair) -> bool:
    return abs(pair.a - pair.b) * 20 < pair.b


def _suspect(pair: Pair, said: str, turned: bool = False) -> Suspicion:
    shown = [one.measure.display for one in (pair.first, pair.second)]
    start, end = reversed(shown) if turned else shown
    found = {"less": "more", "more": "less"}[said]
    return pair.suspect("conflict", "stop", f"the words say {said}, but from {start} to {end} is {found}", SOURCE)
