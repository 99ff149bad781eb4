"""A change that goes the other way than its words say.

Takes "lowered the action from 5/64 to 7/64", "raised it from 9 mm to 7 mm", "from 5 mm down to 7 mm" and "thinned it
from 2.5 to 2.8 mm"; refuses "from the 5 mm mark down to the 7 mm one", "lowered the saddle, so the gap went from 2
to 3 mm", "scraped it from 5 mm to 20 mm in from the edge" and what is said not to be so. Source: the words themselves.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from extract.checks.finding import Suspicion
from extract.checks.pair import HEDGE, Pair, pairs
from extract.checks.talk import Talk

SOURCE = "the narration itself: the words and the figures go opposite ways"
_DOWN = (
    "lower|lowers|lowered|lowering|reduce|reduces|reduced|reducing|thin|thins|thinned|thinning|narrow|narrowed|narrowing|"
    "shorten|shortened|shortening|shrink|shrunk|decrease|decreased|lessen|lessened"
)
_UP = (
    "raise|raises|raised|raising|widen|widens|widened|widening|thicken|thickened|thickening|lengthen|lengthened|enlarge|"
    "enlarged|enlarging|increase|increased|increasing|ream|reamed|reaming"
)
_OBJECT = (
    r"(?:(?!(?:and|so|but|then|which|because|until|when|while|it's|went|goes|came|comes|was|is|are|ended|rose|fell|grew|"
    r"gap|clearance|if|by)\b)[^<>.\s]+ ){0,5}"
)
_FROM_TO = rf"from {HEDGE}<a> (?:down |up |back )?to {HEDGE}<b>"
_TO_FROM = rf"(?:down |up |back )?to {HEDGE}<a> from {HEDGE}<b>"
_SMALLER = (
    re.compile(rf"\b(?:{_DOWN}) {_OBJECT}{_FROM_TO}"),
    re.compile(rf"\bfrom {HEDGE}<a> (?:right |all the way )?down to {HEDGE}<b>"),
)
_LARGER = (
    re.compile(rf"\b(?:{_UP}) {_OBJECT}{_FROM_TO}"),
    re.compile(rf"\bfrom {HEDGE}<a> (?:right |all the way )?up to {HEDGE}<b>"),
)
_SMALLER_BACK = (
    re.compile(rf"\b(?:{_DOWN}) {_OBJECT}{_TO_FROM}"),
    re.compile(rf"\bdown to {HEDGE}<a> from {HEDGE}<b>"),
)
_LARGER_BACK = (re.compile(rf"\b(?:{_UP}) {_OBJECT}{_TO_FROM}"), re.compile(rf"\bup to {HEDGE}<a> from {HEDGE}<b>"))
_REFUSED = re.compile(
    r"\b(?:bias|gauge|gauges|drop|depth|deep|deeper|recess|below|under|beneath|scale|ratio|gear|not|never|instead|wrong|"
    r"wrongly|meant|supposed|mistake|backwards|didn't|don't|doesn't|won't|can't|wasn't|isn't|rather|trying|without|"
    r"countersink|overhang|minus|negative|distance|line|move|moved|slide|slid|range|anything|anywhere)\b"
)
_PLACE = frozenset(
    {
        "mark",
        "line",
        "hole",
        "fret",
        "position",
        "one",
        "from",
        "off",
        "away",
        "behind",
        "back",
        "along",
        "either",
        "each",
        "apart",
        "up",
        "down",
        "above",
        "below",
        "out",
    }
)
"""Behind a figure these make it a place or a distance."""
_KINDS = frozenset(
    {
        "length",
        "mass",
        "temperature",
        "pressure",
        "torque",
        "voltage",
        "current",
        "resistance",
        "capacitance",
        "force",
        "stiffness",
        "angle",
        "power",
    }
)
_FAR = Fraction(4)
"""Figures further apart than this are of two things, or one has lost its unit."""


def find_reversed(talk: Talk) -> Iterator[Suspicion]:
    """Each pair of figures that goes up where the words say down, or down where they say up."""
    for pair in pairs(talk):
        if pair.second.measure.kind in _KINDS and pair.a > 0 and pair.b > 0 and not _is_of_places(pair):
            found = _judge(pair)
            if found is not None:
                yield found


def _is_of_places(pair: Pair) -> bool:
    behind = pair.second.after[:1]
    return (
        bool(behind and behind[0] in _PLACE)
        or pair.second.after[:2] == ("in", "from")
        or _REFUSED.search(pair.text) is not None
    )


def _judge(pair: Pair) -> Suspicion | None:
    hedged = pair.first.measure.hedged or pair.second.measure.hedged
    if not 1 / _FAR < pair.a / pair.b < _FAR or pair.a == pair.b or (hedged and _is_close(pair)):
        return None
    rises = pair.b > pair.a
    for said, there, back in (("less", _SMALLER, _SMALLER_BACK), ("more", _LARGER, _LARGER_BACK)):
        less = said == "less"
        if rises == less and _says(pair, there):
            return _suspect(pair, said)
        if rises != less and _says(pair, back):
            return _suspect(pair, said, turned=True)
    return None


def _says(pair: Pair, ways: tuple[re.Pattern[str], ...]) -> bool:
    return any(pattern.search(pair.text) for pattern in ways)


def _is_close(pair: Pair) -> bool:
    return abs(pair.a - pair.b) * 20 < pair.b


def _suspect(pair: Pair, said: str, turned: bool = False) -> Suspicion:
    shown = [one.measure.display for one in (pair.first, pair.second)]
    start, end = reversed(shown) if turned else shown
    found = {"less": "more", "more": "less"}[said]
    return pair.suspect("conflict", "stop", f"the words say {said}, but from {start} to {end} is {found}", SOURCE)
