"""Whole numbers in words, and words of a figure written as the prime writes them: "sixty-fourths"."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from extract.numbers.vocabulary import vocabulary


@cache
def _named() -> dict[int, str]:
    words = vocabulary().words
    kinds = {"ones", "teens", "tens"}
    return {value: word for word, (kind, value) in reversed(list(words.items())) if kind in kinds}


def cardinal(number: int) -> str:
    """A whole number below 1000 in words, without hyphens: "one hundred and forty two"."""
    if number in _named():
        return _named()[number]
    if number < 100:
        return f"{_named()[number // 10 * 10]} {_named()[number % 10]}"
    hundreds, rest = divmod(number, 100)
    return f"{_named()[hundreds]} hundred" + (f" and {cardinal(rest)}" if rest else "")


def joined(parts: Sequence[str]) -> str:
    """Parts as text: a ten and what goes with it get a hyphen."""
    words = vocabulary().words
    text = ""
    for at, part in enumerate(parts):
        kind, value = words.get(part.removesuffix("s"), words.get(part, ("", 0)))
        before = words.get(parts[at - 1], ("", 0))[0] if at else ""
        glued = before == "tens" and (kind == "ones" or (kind == "ordinal" and value < 10))
        text += ("-" if glued else " ") + part
    return text.strip()
