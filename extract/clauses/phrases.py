"""Cue phrases from data files, found in a narration's words."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import product

_SHORTENED = re.compile(r"(?<=\w)(n't|'(?:s|m|re|ve|ll|d)\b)")
_ANY = "*"
_LONGEST_GAP = 4


def words_of(said: str) -> tuple[str, ...]:
    """A phrase as the tokeniser splits it: "don't i've" is do, n't, i, 've."""
    return tuple(_SHORTENED.sub(r" \1", said).split())


def spelt_out(said: str) -> tuple[str, ...]:
    """Every phrase that a pattern stands for: "ca|could n't quite? say" is four of them."""
    choices = [[*word.removesuffix("?").split("|"), *([""] if word.endswith("?") else [])] for word in said.split()]
    return tuple(" ".join(filter(None, words)) for words in product(*choices))


class Phrases:
    """A set of phrases; "*" in one stands for up to four words, "a|b" for either, "a?" for one that may be missing."""

    def __init__(self, said: Iterable[str]) -> None:
        self._by_first: dict[str, list[tuple[str, ...]]] = {}
        phrases = {words_of(phrase) for one in said for phrase in spelt_out(one)}
        for phrase in sorted(phrases, key=lambda words: (-len(words), words)):
            self._by_first.setdefault(phrase[0], []).append(phrase)

    def length_at(self, words: tuple[str, ...], at: int) -> int:
        """How many words of the longest phrase begin at a place, 0 where none does."""
        if at >= len(words) or words[at] not in self._by_first:
            return 0
        return max((_match(phrase, words, at) for phrase in self._by_first[words[at]]), default=0)

    def first_in(self, words: tuple[str, ...], start: int, end: int) -> tuple[int, int] | None:
        """Where the first phrase that begins and ends among the words stands, or null."""
        for at in range(start, min(end, len(words))):
            if words[at] not in self._by_first:
                continue
            length = self.length_at(words, at)
            if length and at + length <= end:
                return at, at + length
        return None


def _match(phrase: tuple[str, ...], words: tuple[str, ...], at: int) -> int:
    if _ANY not in phrase:
        return len(phrase) if phrase == words[at : at + len(phrase)] else 0
    gap = phrase.index(_ANY)
    before, after = phrase[:gap], phrase[gap + 1 :]
    if before != words[at : at + gap]:
        return 0
    for skipped in range(_LONGEST_GAP + 1):
        start = at + gap + skipped
        if after == words[start : start + len(after)]:
            return gap + skipped + len(after)
    return 0
