"""A bit larger than the hole it made, or a shaft larger than the hole it moves through.

Takes "drilled with a 6 mm bit, the hole's 5.5" and "the 8 mm shaft slides through a 7 mm bush"; refuses what is
pressed, driven, tapered or tapped, a hole drilled for something else, and wood that closes up by a hair.
Source: geometry; a drilled hole is never smaller than its drill but for what the material springs back
(common practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from functools import cache

from extract.checks.finding import Suspicion
from extract.checks.pair import HEDGE, WORD, Pair, pairs
from extract.checks.said_in import either, holding
from extract.checks.talk import Talk

SOURCE = "geometry: what makes a hole, or moves in it, is no larger than the hole"
_TABLE = "bores"
_SPRING = Fraction(104, 100)
"""A hole in wood or plastic may close behind the drill by so much."""
_FAR = Fraction(3)


@cache
def _made() -> re.Pattern[str]:
    """ "drilled it with a 6 mm bit, so the hole's 5.5"."""
    return re.compile(
        rf"\b{either(_TABLE, 'made')} {WORD}{{0,3}}(?:with|using) (?:a|an|my|the) {HEDGE}<a> {either(_TABLE, 'bits')} "
        rf"(?:\. )?(?:and |so |now |but ){{0,2}}(?:the |that )(?:hole|hole's|bore|bore's) "
        rf"(?:{either(_TABLE, 'reads')} ){{0,3}}{HEDGE}<b> "
    )


@cache
def _through() -> re.Pattern[str]:
    """ "the 8 mm shaft slides freely through a 7 mm bush"."""
    return re.compile(
        rf"<a> {either(_TABLE, 'shafts')} (?:then |just |now |freely |nicely |easily ){{0,2}}{either(_TABLE, 'moves')} "
        rf"(?:freely |nicely |easily |straight |right |smoothly |sweetly ){{0,2}}(?:through|in|into|inside) "
        rf"(?:a|an|the|its|that|this) {HEDGE}<b> {either(_TABLE, 'holes')}\b"
    )


def find_too_large_for_hole(talk: Talk) -> Iterator[Suspicion]:
    """Each bit or shaft larger than the hole that the words put it in."""
    for pair in pairs(talk):
        if pair.second.measure.kind != "length" or pair.b <= 0 or pair.a > _FAR * pair.b:
            continue
        if holding(_TABLE, "refused").search(pair.text):
            continue
        what = _what(pair)
        if what:
            first, second = (one.measure.display for one in (pair.first, pair.second))
            yield pair.suspect("implausible", "stop", what.format(first, second), SOURCE)


def _what(pair: Pair) -> str:
    if pair.a > _SPRING * pair.b and _made().search(pair.text):
        return "a bit of {} makes no hole as small as {}"
    if (
        pair.a > pair.b
        and not pair.first.measure.hedged
        and not pair.second.measure.hedged
        and _through().search(pair.text)
    ):
        return "what is {} across does not move in a hole of {}"
    return ""
