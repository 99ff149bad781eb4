"""Figures in the words of a step: "Heat the plate to 140 °F" shows 140 °F, and does not show 40 °F."""

from __future__ import annotations

import re

from extract.record import Measure


def shows(text: str, figure: str) -> bool:
    """Whether a text shows a figure, whatever spaces stand in it."""
    return bool(figure.strip()) and _pattern(figure).search(text) is not None


def shows_measure(text: str, measure: Measure) -> bool:
    """Whether a text shows a measure, as displayed or as said."""
    return shows(text, measure.display) or shows(text, measure.quote)


def former_in(text: str, measure: Measure) -> str | None:
    """The figure that a text shows of an amended measure as it was before; null where it shows none."""
    was = measure.ruling.was if measure.ruling is not None else None
    if was is None or was.display is None:
        return None
    return next((figure for figure in (was.display, measure.quote) if shows(text, figure)), None)


def put_figure(text: str, figure: str, other: str) -> str:
    """A text with another figure in the place of the first one that it shows."""
    return _pattern(figure).sub(lambda _: other, text, count=1)


def _pattern(figure: str) -> re.Pattern[str]:
    words = r"\s+".join(re.escape(word) for word in figure.split())
    return re.compile(rf"(?<![\w./]){words}(?![\w/])", re.IGNORECASE)
