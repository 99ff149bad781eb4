"""Noughts behind a point: "point o-o-two", "point o eight oh" and "point of one" for "point oh ..."."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from extract.numbers.vocabulary import vocabulary
from extract.rivals.confusions import Rewrite

WHY = "a nought behind a point was written otherwise"
FAVOUR = 0.5
"""Nats, since a lone letter o is no word at a bench."""

_NOUGHTS = frozenset({"o", "oh", "zero", "nought"})
_AS_NOUGHT = frozenset({"o", "of", "a", "all", "or", "on", "owe", "over"})
_POINTS = frozenset({"point", "pint"})


def noughts(parts: Sequence[str]) -> Iterator[Rewrite]:
    """Ways of reading what follows a point as digits; also with a second nought, since two run together."""
    for start, part in enumerate(parts):
        if part not in _POINTS:
            continue
        end = start + 1
        while end < len(parts) and (_is_digit(parts[end]) or parts[end] in _NOUGHTS or end == start + 1):
            end += 1
        run = list(parts[start + 1 : end])
        if not run or not (_is_digit(run[0]) or run[0] in _NOUGHTS | _AS_NOUGHT):
            continue
        spelled = ["oh" if one in _NOUGHTS | _AS_NOUGHT else one for one in run]
        for front, back in product((False, True), (False, True)):
            more = spelled[0] == "oh" or not front
            new = (["oh"] if front else []) + spelled + (["oh"] if back else [])
            if more and any(one != "oh" for one in new) and ("point", *new) != tuple(parts[start:end]):
                yield Rewrite(start, end, ("point", *new), WHY, FAVOUR if not (front or back) else 0.0)


def _is_digit(part: str) -> bool:
    return part in vocabulary().words and vocabulary().words[part][0] == "ones"
