"""A figure in doubt, and what may have been said instead."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Rival:
    """Another reading of a stretch of words."""

    text: str
    why: str
    """Which confusion it comes from, in words for a person."""
    sense: float = 0.0
    """How much better (above 0) or worse the sentence and the trade allow it than what was heard, in nats."""


@dataclass(frozen=True, slots=True)
class Doubt:
    """Words `start` to `end` (exclusive) of a window that hold a figure, and its rivals, if it has any."""

    start: int
    end: int
    rivals: tuple[Rival, ...]
    reread: Callable[[Sequence[str]], Sequence[Rival]] = field(default=lambda _: (), compare=False)
    """Of other hearings of these words, those that are worth weighing."""


RivalMaker = Callable[[Sequence[str]], Sequence[Doubt]]
"""Finds the figures among a window's words. Spans rise and don't overlap."""
