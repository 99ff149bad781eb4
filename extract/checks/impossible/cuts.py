"""A cut deeper than the thing is thick, or wider than its part.

Takes "a recess 8 mm deep in a 6 mm thick board" (stop) and "a slot 8 mm wide in a 6 mm wide saddle" (look: a lap may
run across); refuses mortises and grooves into an edge, and a cut that goes right through. Source: geometry.
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
from extract.record import Severity

SOURCE = "geometry: a cut in a face is no deeper than the thing is thick"
_TABLE = "cuts"
_FAR = Fraction(10)


@cache
def _ways(cut: str, deep: str, thick: str) -> tuple[re.Pattern[str], ...]:
    """ "a recess 8 mm deep in a 6 mm thick board", "an 8 mm deep recess in a board that's 6 mm thick"."""
    noun, into = either(_TABLE, cut), "(?:in|into|in to) (?:a|an|the|this|that|its) "
    behind = rf"(?:is |it's |about |just |cut |of |routed |chiselled |goes |went ){{0,3}}{HEDGE}"
    part = rf"{WORD}{{1,2}}(?:that's |that is |which is ){HEDGE}"
    starts = (rf"\b{noun} {behind}<a> {deep} {into}", rf"<a> {deep} {noun} {into}")
    return tuple(re.compile(f"{start}{middle}<b> {thick} ") for start in starts for middle in (HEDGE, part))


def find_too_deep(talk: Talk) -> Iterator[Suspicion]:
    """Each cut that is larger than what the words say it is cut in."""
    for pair in pairs(talk):
        if pair.second.measure.kind != "length" or not 0 < pair.b < pair.a < pair.b * _FAR:
            continue
        if holding(_TABLE, "refused").search(pair.text) is None:
            yield from _judge(pair)


def _judge(pair: Pair) -> Iterator[Suspicion]:
    first, second = (one.measure.display for one in (pair.first, pair.second))
    ways: tuple[tuple[tuple[re.Pattern[str], ...], Severity, str], ...] = (
        (_ways("face", "deep", "thick"), "stop", "a cut {} deep is deeper than the {} it is cut in"),
        (_ways("cut", "wide", "wide"), "look", "a cut {} wide is wider than the {} it is cut in"),
    )
    for patterns, severity, message in ways:
        if any(one.search(pair.text) for one in patterns):
            yield pair.suspect("implausible", severity, message.format(first, second), SOURCE)
            return
