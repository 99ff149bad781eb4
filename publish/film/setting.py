"""Breaks words into lines of a still and chooses the size of type, by reckoning widths on the safe side.

A still is drawn in whatever font of the list its reader has, so each letter is taken to be as wide as in the widest of
them (DejaVu Serif Bold, advance widths in thousandths of an em: m 1006, W 1100, digits 696, most others below 720).
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass

_WIDE, _CAPITAL, _NARROW, _OTHER = 1.15, 0.9, 0.42, 0.74
_NARROW_ONES = frozenset(" .,:;'’‘|!ijl()[]/")
_BROAD_ONES = frozenset("MW@%mw—…")
SIZES = (148, 124, 104, 88, 72)
"""Sizes of type in pixels of a picture 1920 wide; at the smallest, 72, a thumbnail of 320 shows letters 12 high."""


@dataclass(frozen=True, slots=True)
class Set:
    """Texts broken into lines of one size."""

    size: int
    lines: tuple[tuple[str, ...], ...]
    """The lines of each text."""


def set_in(texts: Sequence[str], width: float, height: float, leading: float, between: float) -> Set:
    """The texts in the largest size in which all fit; at the smallest, what does not fit is cut with an ellipsis.

    `leading` is the height of a line and `between` the gap between texts, both in sizes of type.
    """
    for size in SIZES:
        broken = tuple(_broken(text, width / size) for text in texts)
        if _high(broken, size, leading, between) <= height:
            return Set(size, broken)
    size = SIZES[-1]
    room = (height / size - between * (len(texts) - 1)) / leading
    each = max(1, int(room / max(len(texts), 1)))
    return Set(size, tuple(_cut(_broken(text, width / size), each, width / size) for text in texts))


def width_of(text: str) -> float:
    """The width of a text in sizes of type, on the safe side."""
    return sum(_letter(one) for one in text)


def _high(broken: Sequence[Sequence[str]], size: int, leading: float, between: float) -> float:
    return size * (leading * sum(len(lines) for lines in broken) + between * (len(broken) - 1))


def _letter(one: str) -> float:
    if unicodedata.combining(one):
        return 0.0
    if unicodedata.east_asian_width(one) in ("W", "F") or one in _BROAD_ONES or ord(one) > 0x2FFF:
        return _WIDE
    if one in _NARROW_ONES:
        return _NARROW
    return _CAPITAL if one.isupper() else _OTHER


def _broken(text: str, width: float) -> tuple[str, ...]:
    lines: list[str] = []
    line = ""
    for word in text.split(" "):
        for piece in _pieces(word, width):
            tried = f"{line} {piece}" if line else piece
            if line and width_of(tried) > width:
                lines.append(line)
                line = piece
            else:
                line = tried
    return (*lines, line)


def _pieces(word: str, width: float) -> list[str]:
    """A word, broken where no line holds it."""
    pieces, piece = [], ""
    for letter in word:
        if piece and width_of(piece + letter) > width:
            pieces.append(piece)
            piece = ""
        piece += letter
    return [*pieces, piece]


def _cut(lines: tuple[str, ...], most: int, width: float) -> tuple[str, ...]:
    if len(lines) <= most:
        return lines
    last = lines[most - 1]
    while last and width_of(f"{last}…") > width:
        last = last[:-1]
    return (*lines[: most - 1], f"{last.rstrip(' ,.;:')}…")
