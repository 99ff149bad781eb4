"""A ring or tube whose outside is smaller than its inside.

Takes "10 mm outside diameter and 12 mm inside" and "the od is 10 mm, id 12 mm"; refuses an outside diameter beside the
bore of something else ("the bearing's od is 22, the housing's bore 22.05"). Source: geometry.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from extract.checks.finding import Suspicion
from extract.checks.pair import HEDGE, Pair, pairs
from extract.checks.talk import Talk

SOURCE = "geometry: the outside of a ring is larger than its inside"
_LINK = r"(?:(?:and|with|by|a|an|its|it's|is|are|but|has|of|on) ){0,4}"
_OUT = r"(?:outside diameter|outer diameter|od|o\.d|outside dia|outer dia) "
_IN = r"(?:inside diameter|inner diameter|id|i\.d|inside dia|inner dia) "
_OUT_FIRST = (
    re.compile(rf"\b{_OUT}{_LINK}{HEDGE}<a> {_LINK}(?:the )?{_IN}{_LINK}{HEDGE}<b>"),
    re.compile(rf"<a> (?:{_OUT}|(?:on the )?outside ){_LINK}{HEDGE}<b> (?:{_IN}|(?:on the )?inside |bore )"),
)
_IN_FIRST = (
    re.compile(rf"\b{_IN}{_LINK}{HEDGE}<a> {_LINK}(?:the )?{_OUT}{_LINK}{HEDGE}<b>"),
    re.compile(rf"<a> (?:{_IN}|(?:on the )?inside |bore ){_LINK}{HEDGE}<b> (?:{_OUT}|(?:on the )?outside )"),
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
    ways = _OUT_FIRST if pair.a < pair.b else _IN_FIRST if pair.a > pair.b else ()
    return any(way.search(pair.text) for way in ways)
