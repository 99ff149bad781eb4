"""Chooses the size of type in which a card fits one sheet, by reckoning its lines.

Takes a card of twelve steps as "close" or "tight"; one of sixty long steps goes over several sheets. Reckoned for what
A4 (ISO 216: 210 mm by 297 mm) and Letter (ANSI Y14.1, size A: 215.9 mm by 279.4 mm) both hold: the width of the one,
the height of the other.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from publish.context import Setting, Size

MARGIN = 10.0
"""Millimetres left free on each side; card.css has the same."""
WIDTH, HEIGHT = 210.0 - 2 * MARGIN, 279.4 - 2 * MARGIN
_SIDE = 0.34
"""What the side column takes of the width."""
_GAP = 6.0
_HEAD = 20.0
"""Lines above and below the title, rule and foot."""
_SPARE = 0.92
"""What may be filled: fonts differ from bench to bench."""


@dataclass(frozen=True, slots=True)
class Type:
    """A size of type and what follows from it, in millimetres."""

    name: Size
    points: float

    @property
    def line(self) -> float:
        """From line to line: 1.3 times the size."""
        return self.points * 1.3 * 25.4 / 72

    @property
    def letter(self) -> float:
        """Width of an average letter: half the size, and some more for wide fonts."""
        return self.points * 0.53 * 25.4 / 72

    def lines(self, text: str, width: float) -> int:
        """Lines that a text takes."""
        return max(1, ceil(len(text) * self.letter / width))


SIZES = (Type("roomy", 11.0), Type("close", 9.5), Type("tight", 8.5), Type("fine", 7.5))
"""The largest first; card.css has a rule for each."""


def setting_for(title: str, laid_out: Sequence[str], side: Sequence[str], steps: Sequence[Sequence[str]]) -> Setting:
    """The largest size in which title, side matter and steps fit one sheet, beside one another or one above the other.

    `laid_out` are the things to lay out, in two columns where the side matter stands above the steps; `side` the
    entries to watch and work to; `steps` the step texts, each with the lines under it. Where nothing fits, the finest
    size, on several sheets.
    """
    for size in SIZES:
        head = _HEAD + size.lines(title, WIDTH * 0.7) * size.line * 1.7
        room = (HEIGHT - head) * _SPARE
        narrow = _steps_height(size, steps, WIDTH * (1 - _SIDE) - _GAP)
        if max(narrow, _side_height(size, (*laid_out, *side), WIDTH * _SIDE)) <= room:
            return Setting(size.name, beside=True, one_sheet=True)
        column = (WIDTH - _GAP) / 2
        things = sum(size.lines(text, column / 2 - 8) * size.line * 1.15 for text in laid_out) / 2
        # Two columns never end level: an entry is not torn apart.
        tallest = max((size.lines(text, column - 4) for text in side), default=0) * size.line
        above = (_side_height(size, side, column) + things + tallest) / 2 + size.line
        if above + _steps_height(size, steps, WIDTH) <= room:
            return Setting(size.name, beside=False, one_sheet=True)
    return Setting(SIZES[-1].name, beside=False, one_sheet=False)


def _side_height(size: Type, side: Sequence[str], width: float) -> float:
    headings = 4 * 1.8 * size.line
    return headings + sum(size.lines(text, width - 4) * size.line + size.line * 0.2 for text in side)


def _steps_height(size: Type, steps: Sequence[Sequence[str]], width: float) -> float:
    under = Type(size.name, size.points * 0.9)
    heights = (
        size.lines(text, width - 12) * size.line + len(figures) * under.line + size.line * 0.37
        for text, *figures in steps
    )
    return 1.6 * size.line + sum(heights)
