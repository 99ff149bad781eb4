"""A ring or tube whose outside is smaller than its inside.

Takes "10 mm outside diameter and 12 mm inside" and "the od is 10 mm, id 12 mm"; refuses an outside diameter beside the
bore of something else ("the bearing's od is 22, the housing's bore 22.05"). Source: geometry.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from extract.checks.finding import Suspicion
from extract.checks.pair import HEDGE, Pair, pairs
from extract.checks.said_in import either
from extract.checks.talk import Talk

SOURCE = "geometry: the outside of a ring is larger than its inside"
_LINK = r"(?:(?:and|with|by|a|an|its|it's|is|are|but|has|of|on) ){0,4}"


@cache
def _ways(first: str, other: str) -> tuple[re.Pattern[str], ...]:
    """One side of a ring said before the other, each before its figure or behind it."""
    one, two = f"{either('rings', first)} ", f"{either('rings', other)} "
    bore = {"inside": "|bore ", "outside": ""}
    return (
        re.compile(rf"\b{one}{_LINK}{HEDGE}<a> {_LINK}(?:the )?{two}{_LINK}{HEDGE}<b>"),
        re.compile(
            rf"<a> (?:{one}|(?:on the )?{first} {bore[first]}){_LINK}{HEDGE}<b> "
            rf"(?:{two}|(?:on the )?{other} {bore[other]})"
        ),
    )


def find_inside_out(talk: Talk) -> Iterator[Suspicion]:
    """Each pair of outside and inside of one thing, in one sentence, the wrong way about."""
    for pair in pairs(talk):
        if pair.second.measure.kind == "length" and pair.a > 0 and pair.b > 0 and _is_inside_out(pair):
            first, second = (one.measure.display for one in (pair.first, pair.second))
            out, within = (first, second) if pair.a < pair.b else (second, first)
            yield pair.suspect(
                "implausible", "stop", f"an outside of {out} is smaller than the inside of {within}", SOURCE
            )


def _is_inside_out(pair: Pair) -> bool:
    if pair.a == pair.b:
        return False
    ways = _ways("outside", "inside") if pair.a < pair.b else _ways("inside", "outside")
    return any(way.search(pair.text) for way in ways)
