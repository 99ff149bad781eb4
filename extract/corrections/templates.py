"""Ways of talking as patterns over words, read from data/corrections.toml.

A template is a row of words. "a|b" is either, a trailing "?" makes a word optional, "{name}" is any phrase of a class
and "~3" at most three words of the same sentence, none of them a figure: "{i} {tell} {it}? {wrong}" takes "i had them
swapped" and "i'm telling you wrong".
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterable, Iterator, Mapping, Sequence

from extract.corrections.pieces import Piece


class Line:
    """A narration's pieces as one line, a "." behind each that ends a sentence."""

    def __init__(self, pieces: Sequence[Piece]) -> None:
        words: list[str] = []
        self.begins: list[int] = []
        at = 0
        for piece in pieces:
            self.begins.append(at)
            text = piece.text.replace(" ", "_") + (" . " if piece.ends else " ")
            words.append(text)
            at += len(text)
        self.text = "".join(words)

    def place(self, offset: int) -> int:
        """The piece that begins at an offset, or the first one behind it."""
        return bisect_left(self.begins, offset)


class Templates:
    """A set of templates that are looked for together; of those that fit at one place the longest is taken."""

    def __init__(self, rows: Iterable[str], classes: Mapping[str, Sequence[str]]) -> None:
        wholes = sorted((_pattern(row, classes) for row in rows), key=len, reverse=True)
        self._any = re.compile(rf"(?:(?<= )|^)(?:{'|'.join(wholes)})")

    def find(self, line: Line, begin: int, end: int) -> Iterator[tuple[int, int]]:
        """Begin and end of what fits and begins between two places, none inside another."""
        if begin >= end or begin >= len(line.begins):
            return
        last = line.begins[end] if end < len(line.begins) else len(line.text)
        for found in self._any.finditer(line.text, line.begins[begin]):
            if found.start() >= last:
                return
            yield line.place(found.start()), line.place(found.end())


def _pattern(row: str, classes: Mapping[str, Sequence[str]]) -> str:
    return "".join(_word(word, classes) for word in row.split())


def _word(word: str, classes: Mapping[str, Sequence[str]]) -> str:
    if word.startswith("~"):
        return rf"(?:[^ .#]+ ){{0,{int(word[1:])}}}"
    optional = "?" if word.endswith("?") else ""
    stem = word.removesuffix("?")
    phrases = classes[stem[1:-1]] if stem.startswith("{") else stem.split("|")
    return rf"(?:(?:{'|'.join(re.escape(one) for one in sorted(phrases, key=len, reverse=True))}) ){optional}"
