"""Digits that stand for a fraction said in words, or for thousandths.

Takes "1164" (eleven sixty-fourths), "930 seconds" and "9.30s" (nine thirty-seconds), "1160 4th", "4,000" (four
thousandths); leaves "1965" and "350" alone, which end in no part of an inch.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from extract.rivals.confusions import Rewrite
from extract.rivals.lists import lists
from extract.rivals.spelling import cardinal

WHY = "a fraction was run together into digits"
WHY_THOUSANDTHS = "thousandths were written as thousands"
_REACH = 4


def fractions_in_digits(parts: Sequence[str]) -> Iterator[Rewrite]:
    """Every way of reading a run of digits as a fraction."""
    for start, part in enumerate(parts):
        if not part[:1].isdigit():
            continue
        run, end = "", start
        while end < min(len(parts), start + _REACH) and re.fullmatch(r"\d+(?:s|th|ths|nd|nds)?", parts[end]):
            run += re.sub(r"\D", "", parts[end])
            end += 1
            yield from _readings(run, start, end, parts[end] if end < len(parts) else "", parts[end - 1])


def _readings(run: str, start: int, end: int, tail: str, last: str) -> Iterator[Rewrite]:
    if run.endswith("000") and len(run) <= 5 and run != "000":
        parts = (*cardinal(int(run[:-3])).split(), "thousandths")
        yield Rewrite(start, end, parts, WHY_THOUSANDTHS)
    seconds = tail.startswith("sec") or last.endswith("s")
    for length in (1, 2):
        top, bottom = run[:-length], run[-length:]
        if not top or top[0] == "0":
            continue
        if bottom in lists().parts and int(top) < int(bottom):
            yield Rewrite(start, end, _part(top, bottom), WHY)
    if seconds and run.endswith("30") and 0 < int(run[:-2] or 0) < 32:
        taken = end + 1 if tail.startswith("sec") else end
        yield Rewrite(start, taken, _part(run[:-2], "32"), WHY)
    if tail in lists().tails and run.endswith("60") and 0 < int(run[:-2] or 0) < 64:
        yield Rewrite(start, end + 1, _part(run[:-2], "64"), WHY)


def _part(top: str, bottom: str) -> tuple[str, ...]:
    name = lists().parts[bottom]
    plural = "halves" if bottom == "2" else f"{name}s"
    return (*cardinal(int(top)).split(), *(name if top == "1" else plural).split())
