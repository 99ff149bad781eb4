"""faster-whisper's pieces of text as words.

It gives "sixty-fourths" as " sixty" and "-fourths": a piece that doesn't begin with a space goes on with the word
before.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of text with its seconds, as the model gave it."""

    text: str
    start: float
    end: float
    probability: float


@dataclass(frozen=True, slots=True)
class Hearing:
    """What the model made of one window; word times are seconds in the window."""

    words: tuple[Piece, ...]
    log_probability: float
    """Mean over the text's tokens."""
    no_speech: float
    """Probability that nothing was said."""
    compression: float
    """How far zlib shrinks the text; a loop shrinks much."""

    @property
    def text(self) -> str:
        """The words as running text."""
        return " ".join(word.text for word in self.words)


def join_pieces(pieces: Iterable[Piece]) -> list[Piece]:
    """Whole words, without white space in them, none made of punctuation alone.

    A word is only as sure as its least sure piece: in "11/64" a doubtful "/64" makes the figure doubtful.
    """
    words: list[Piece] = []
    for piece in pieces:
        goes_on = bool(words) and not piece.text[:1].isspace()
        for number, text in enumerate(piece.text.split()):
            bare = not any(character.isalnum() for character in text)
            if words and ((goes_on and number == 0) or bare):
                last = words[-1]
                sure = last.probability if bare else min(last.probability, piece.probability)
                words[-1] = Piece(last.text + text, last.start, max(last.end, piece.end), sure)
            elif not bare or text in _SIGNS:
                words.append(Piece(text, piece.start, piece.end, piece.probability))
    return words


_SIGNS = frozenset("$£€%°")
"""Signs that may begin a word: a bare dash or dot may not."""


def in_order(words: Iterable[Piece]) -> list[Piece]:
    """The words with times that rise: none begins before the last one ended, none ends before it begins."""
    ordered: list[Piece] = []
    clock = 0.0
    for word in words:
        start = round(max(word.start, clock), 3)
        end = round(max(word.end, start), 3)
        ordered.append(Piece(word.text, start, end, word.probability))
        clock = end
    return ordered
