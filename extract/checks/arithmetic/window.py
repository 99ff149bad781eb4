"""The words about a figure and the figures before it, as one line that a pattern can read.

"42 thou down to 36, so 8" becomes "<0> down to <1> so <2> "; a small count becomes "%3": "<0> %3 gaps so <1> ".
"""

from __future__ import annotations

from dataclasses import dataclass

from extract.checks.arithmetic.counting import counted
from extract.checks.talk import Said, Talk

_FIGURES = 4
"""Figures that a sum said aloud has at most, the result included."""
_BEHIND = 4


@dataclass(frozen=True, slots=True)
class Window:
    """`text` ends with the figure in question and a few words behind it; `<n>` stands for `figures[n]`."""

    text: str
    figures: tuple[Said, ...]


def window_before(talk: Talk, one: Said) -> Window | None:
    """The window that ends with a figure; None where no word before it could make it a result."""
    if not one.before:
        return None
    figures = [one]
    while len(figures) < _FIGURES and (earlier := talk.previous(figures[0])) is not None:
        figures.insert(0, earlier)
    pieces: list[str] = []
    for place, figure in enumerate(figures):
        pieces.extend(counted(figure.before))
        pieces.append(f"<{place}>")
    pieces.extend(one.after[:_BEHIND])
    return Window(" ".join(pieces) + " ", tuple(figures))
