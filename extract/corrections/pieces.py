"""A narration as words and figures: what the rules of this stage read.

A figure is one piece, however many words it was said in; marks hang on the piece before them. "About 20, no, what, 5
grams" is about / 20 (,) / no (,) / what (,) / 5 grams.
"""

from __future__ import annotations

from dataclasses import dataclass

from spacy.tokens import Doc

from extract.narration import narration_of
from extract.spans import Measured, Number

_CLOSING = {
    ",": ",",
    ".": ".",
    "?": "?",
    "!": "!",
    ";": ".",
    ":": ",",
    "…": ",",
    "...": ",",
    "—": ",",
    "–": ",",
    "-": "",
}
_ENDS = frozenset(".?!")
_PAUSE = 1.2
"""Seconds of silence that end what was being said, in captions without marks."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A word in lower case, or a figure."""

    text: str
    start: int
    """First token."""
    end: int
    """Behind the last token."""
    mark: str
    """The mark behind it: "," "." "?" "!" or nothing; a long pause in captions without marks is a full stop."""
    cue: int
    tag: str
    """Part of speech of its last token, fine-grained."""
    measured: Measured | None = None
    number: Number | None = None

    @property
    def figure(self) -> bool:
        """A figure, of a measure or bare."""
        return self.measured is not None or self.number is not None

    @property
    def ends(self) -> bool:
        """A sentence ends behind it."""
        return self.mark in _ENDS and bool(self.mark)


def cut(doc: Doc, measures: tuple[Measured, ...]) -> tuple[Piece, ...]:
    """All pieces of a narration in order. Linear in the number of tokens."""
    narration = narration_of(doc)
    figures: dict[int, tuple[int, Measured | None, Number | None]] = {}
    taken: set[int] = set()
    for one in measures:
        figures[one.quantity.start] = (one.quantity.end, one, one.quantity.number)
        taken.update(range(one.quantity.start, one.quantity.end))
    for number in doc._.numbers or ():
        if taken.isdisjoint(range(number.start, number.end)):
            figures[number.start] = (number.end, None, number)
    pieces: list[Piece] = []
    at = 0
    while at < len(doc):
        end, measured, figure = figures.get(at, (0, None, None))
        if not end:
            end = _word_end(doc, at, figures)
        text = "#" if figure is not None else _plain(doc[at:end].text)
        mark = ""
        if not text and pieces:
            _remark(pieces, doc[at:end].text)
        elif text:
            text, mark = _split_mark(text) if figure is None else (text, "")
            last = doc[end - 1]
            pieces.append(Piece(text, at, end, mark, narration.cue[at], last.tag_, measured, figure))
        if pieces and not narration.punctuated and _is_pause(narration.start, narration.end, end):
            _remark(pieces, ".")
        at = end
    return tuple(pieces)


def _word_end(doc: Doc, at: int, figures: dict[int, tuple[int, Measured | None, Number | None]]) -> int:
    """Behind the last token of a word: "do" and "n't" are one, a mark is one by itself."""
    end = at + 1
    if not _plain(doc[at].text):
        return end
    while end < len(doc) and not doc[end - 1].whitespace_ and end not in figures and _plain(doc[end].text):
        end += 1
    return end


def _plain(text: str) -> str:
    """The letters and figures of a word; empty for a mark."""
    text = text.lower().replace("’", "'")
    return text if any(letter.isalnum() for letter in text) else ""


def _split_mark(text: str) -> tuple[str, str]:
    stem = text.rstrip(".,;:?!…—–-'\"")
    return stem, _CLOSING.get(text[len(stem) : len(stem) + 1], "")


def _remark(pieces: list[Piece], mark: str) -> None:
    last = pieces[-1]
    known = _CLOSING.get(mark[:1], "")
    if known and not last.ends:
        pieces[-1] = Piece(last.text, last.start, last.end, known, last.cue, last.tag, last.measured, last.number)


def _is_pause(starts: tuple[float, ...], ends: tuple[float, ...], at: int) -> bool:
    return at < len(starts) and starts[at] - ends[at - 1] >= _PAUSE
