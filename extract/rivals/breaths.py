"""A mixed number that a breath was taken in: "sixteen, and five eighths inches", "eighty-eight. And a half thou".

The model writes a mark where the voice pauses; said on its own, "five eighths" is the rest of the number before.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from capture.figures import is_number, parts_of

WHY = "a breath was taken inside a number"
FAVOUR = 0.5
"""Nats: people seldom say "and" between two measures of one thing."""


def breath_at(words: Sequence[str], at: int) -> bool:
    """True where word `at` ends in a mark, behind a number, and "and" with a part of a number follows."""
    if at + 2 >= len(words) or not words[at].endswith((",", ".")) or not is_number(words[at]):
        return False
    further = words[at + 2]
    return parts_of(words[at + 1]) == ["and"] and (parts_of(further) in (["a"], ["an"]) or is_number(further))


def without_breaths(words: Sequence[str]) -> Iterator[str]:
    """The words as one number, where a breath parts them."""
    for at in range(len(words)):
        if breath_at(words, at):
            yield " ".join([*words[:at], words[at].rstrip(",."), "and", *words[at + 2 :]])
