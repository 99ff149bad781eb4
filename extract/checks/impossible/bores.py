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

from extract.checks.finding import Suspicion
from extract.checks.pair import HEDGE, WORD, Pair, pairs
from extract.checks.talk import Talk

SOURCE = "geometry: what makes a hole, or moves in it, is no larger than the hole"
_BIT = (
    r"(?:bit|drill|drill bit|twist drill|twist bit|brad point|forstner|forstner bit|reamer|auger|auger bit|spade bit)"
)
_MADE = re.compile(
    rf"\b(?:drilled|drill|drilling|bored|reamed) {WORD}{{0,3}}(?:with|using) (?:a|an|my|the) {HEDGE}<a> {_BIT} "
    rf"(?:\. )?(?:and |so |now |but ){{0,2}}(?:the |that )(?:hole|hole's|bore|bore's) "
    rf"(?:(?:is|measures|mikes|comes|came|at|out|now|reads) ){{0,3}}{HEDGE}<b> "
)
_SHAFT = r"(?:shaft|pin|rod|bolt|spindle|axle|arbor|tube|dowel|peg|bar)"
_MOVES = r"(?:slides|drops|runs|turns|spins|passes|slips|floats|rotates|slid|dropped|slipped|passed)"
_THROUGH = re.compile(
    rf"<a> {_SHAFT} (?:then |just |now |freely |nicely |easily ){{0,2}}{_MOVES} "
    rf"(?:freely |nicely |easily |straight |right |smoothly |sweetly ){{0,2}}(?:through|in|into|inside) "
    rf"(?:a|an|the|its|that|this) {HEDGE}<b> (?:hole|bore|bush|bushing|tube|bearing)\b"
)
_REFUSED = re.compile(
    r"\b(?:press|pressed|interference|tight|drive|driven|drove|tap|tapped|tapping|hammer|hammered|force|forced|shrink|"
    r"shrunk|squeeze|taper|tapered|thread|threaded|ream out|swell|swells|swollen|won't|doesn't|can't|couldn't|wouldn't|"
    r"not|never|too|need|needs|until|once|after|when|if|oversize|undersize|rubber|leather|cork|felt|foam|depth|deep|"
    r"shrinks|closed|closes|flattened|flats|step|stepped|turned down|pilot)\b"
)
_SPRING = Fraction(104, 100)
"""A hole in wood or plastic may close behind the drill by so much."""
_FAR = Fraction(3)


def find_too_large_for_hole(talk: Talk) -> Iterator[Suspicion]:
    """Each bit or shaft larger than the hole that the words put it in."""
    for pair in pairs(talk):
        if pair.second.measure.kind != "length" or pair.b <= 0 or pair.a > _FAR * pair.b or _REFUSED.search(pair.text):
            continue
        what = _what(pair)
        if what:
            first, second = (one.measure.display for one in (pair.first, pair.second))
            yield pair.suspect("implausible", "stop", f"{what.format(first, second)}", SOURCE)


def _what(pair: Pair) -> str:
    if pair.a > _SPRING * pair.b and _MADE.search(pair.text):
        return "a bit of {} makes no hole as small as {}"
    if (
        pair.a > pair.b
        and not pair.first.measure.hedged
        and not pair.second.measure.hedged
        and _THROUGH.search(pair.text)
    ):
        return "what is {} across does not move in a hole of {}"
    return ""
