"""Reads a spelled-out figure, by a table of its own, to hold the values in truth.json against the words."""

from __future__ import annotations

import re
from fractions import Fraction

from num2words import num2words

PARTS = {"half": 2, "quarter": 4, "eighth": 8, "sixteenth": 16, "thirty-second": 32, "sixty-fourth": 64}
WHOLE = {words: value for value in range(1000) for words in (num2words(value), num2words(value).replace(" and ", " "))}
HEDGE = re.compile(r"^(about|roughly|call it) ")


def number(words: str) -> Fraction:
    """The number that a quote starts with: "twenty-five and a half inches" is 51/2."""
    text = HEDGE.sub("", words.lower())
    text = re.sub(r"\ba (?=hundred)", "one ", text)
    found: list[tuple[int, Fraction]] = []
    tokens = text.split()
    for end in range(1, len(tokens) + 1):
        value = _read(" ".join(tokens[:end]))
        if value is not None:
            found.append((end, value))
    if not found:
        raise ValueError(f"no number starts {words!r}")
    return found[-1][1]


def _read(text: str) -> Fraction | None:
    if text in WHOLE:
        return Fraction(WHOLE[text])
    joined = re.fullmatch(r"(?:(.+) and )?(?:(a|half a|[a-z]+)[ -])?([a-z-]+?)s?", text)
    if joined is None or joined[3] not in PARTS:
        return None
    before, count, part = joined.groups()
    whole = WHOLE.get(before) if before else 0
    top = 1 if count in (None, "a") else WHOLE.get(count)
    if whole is None or top is None:
        return None
    return whole + Fraction(top, PARTS[part])
