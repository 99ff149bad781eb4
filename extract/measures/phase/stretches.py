"""The stretches of words around a figure that tell its phase, and what was measured before it."""

from __future__ import annotations

from collections.abc import Callable

from extract.measures.figure import Figure, Finding
from extract.record import Phase

Rule = Callable[[Figure, Finding], Phase | None]
"""A rule answers with a phase or passes."""

BEGUN = 3
"""So many verbs of work before a figure show that the work has begun."""
_SENTENCE_REACH = 14
_VERDICT_REACH = 14
_MEASURED_REACH = 1200
"""Tokens, all of them."""


def sentence_before(figure: Figure, reach: int = _SENTENCE_REACH) -> tuple[str, ...]:
    """Words of the sentence before the figure, at most `reach` tokens of them."""
    return figure.scene.text(max(figure.sentence[0], figure.start - reach), figure.start)


def clause_behind(figure: Figure) -> tuple[str, ...]:
    """Words of the clause behind the figure."""
    return figure.scene.text(*figure.right)


def close_behind(figure: Figure) -> tuple[str, ...]:
    """Words behind the figure up to the next, sentence or not."""
    stop = figure.end + _VERDICT_REACH
    return figure.scene.text(figure.end, min(stop, figure.following.start) if figure.following else stop)


def work_begun(figure: Figure) -> bool:
    """True once enough has been done that a bare size is one to work to."""
    return figure.scene.work_done(figure.start) >= BEGUN


def measured_before(figure: Figure, finding: Finding) -> Finding | None:
    """The last finding of the same attribute of the same thing."""
    for earlier in figure.earlier(_MEASURED_REACH):
        same = earlier.attribute == finding.attribute and earlier.head == finding.head
        if same and earlier.figure.kind == figure.kind:
            return earlier
    return None
