"""A cut deeper than the thing is thick, or wider than its part.

Takes "a recess 8 mm deep in a 6 mm thick board" (stop) and "a slot 8 mm wide in a 6 mm wide saddle" (look: a lap may
run across); refuses mortises and grooves into an edge, and a cut that goes right through. Source: geometry.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from extract.checks.finding import Suspicion
from extract.checks.pair import HEDGE, WORD, Pair, pairs
from extract.checks.talk import Talk
from extract.record import Severity

SOURCE = "geometry: a cut in a face is no deeper than the thing is thick"
_FACE = r"(?:recess|counterbore|inlay|dado|trench|pocket|rebate|rabbet)"
_CUT = r"(?:slot|groove|recess|channel|inlay|pocket)"
_A = r"(?:in|into|in to) (?:a|an|the|this|that|its) "
_BEHIND_CUT = rf"(?:is |it's |about |just |cut |of |routed |chiselled |goes |went ){{0,3}}{HEDGE}"
_DEEP = (
    re.compile(rf"\b{_FACE} {_BEHIND_CUT}<a> deep {_A}{HEDGE}<b> thick "),
    re.compile(rf"<a> deep {_FACE} {_A}{HEDGE}<b> thick "),
    re.compile(rf"<a> deep {_FACE} {_A}{WORD}{{1,2}}(?:that's |that is |which is ){HEDGE}<b> thick "),
    re.compile(rf"\b{_FACE} {_BEHIND_CUT}<a> deep {_A}{WORD}{{1,2}}(?:that's |that is |which is ){HEDGE}<b> thick "),
)
_WIDE = (
    re.compile(rf"\b{_CUT} {_BEHIND_CUT}<a> wide {_A}{HEDGE}<b> wide "),
    re.compile(rf"<a> wide {_CUT} {_A}{HEDGE}<b> wide "),
    re.compile(rf"\b{_CUT} {_BEHIND_CUT}<a> wide {_A}{WORD}{{1,2}}(?:that's |that is |which is ){HEDGE}<b> wide "),
)
_REFUSED = re.compile(
    r"\b(?:edge|end|side|through|across|along|lengthwise|mortise|mortice|can't|couldn't|won't|not|never|too|if|would|"
    r"both|two|pair|stack|laminated|glued|packed|joint|lap|lapped|over)\b"
)
_FAR = Fraction(10)


def find_too_deep(talk: Talk) -> Iterator[Suspicion]:
    """Each cut that is larger than what the words say it is cut in."""
    for pair in pairs(talk):
        if pair.second.measure.kind != "length" or not 0 < pair.b < pair.a < pair.b * _FAR:
            continue
        if _REFUSED.search(pair.text) is None:
            yield from _judge(pair)


def _judge(pair: Pair) -> Iterator[Suspicion]:
    first, second = (one.measure.display for one in (pair.first, pair.second))
    ways: tuple[tuple[tuple[re.Pattern[str], ...], Severity, str], ...] = (
        (_DEEP, "stop", "a cut {} deep is deeper than the {} it is cut in"),
        (_WIDE, "look", "a cut {} wide is wider than the {} it is cut in"),
    )
    for patterns, severity, message in ways:
        if any(one.search(pair.text) for one in patterns):
            yield pair.suspect("implausible", severity, message.format(first, second), SOURCE)
            return
