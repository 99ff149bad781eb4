"""What makes a piece that is built like a step none, or doubtful."""

from __future__ import annotations

from collections.abc import Callable

from extract.steps.scene import Scene
from extract.steps.vetoes.aside import aside
from extract.steps.vetoes.deferred import deferred
from extract.steps.vetoes.empty import empty
from extract.steps.vetoes.farewell import farewell
from extract.steps.vetoes.history import history
from extract.steps.vetoes.idle import idle
from extract.steps.vetoes.mishap import mishap
from extract.steps.vetoes.people import people
from extract.steps.vetoes.strange import strange

Veto = Callable[[Scene], bool]

VETOES: tuple[tuple[str, Veto], ...] = (
    ("history", history),
    ("deferred", deferred),
    ("aside", aside),
    ("farewell", farewell),
    ("mishap", mishap),
)
"""Refuse a candidate outright: its action is none of this job, whatever else speaks for it."""

DOUBTS: tuple[tuple[str, Veto], ...] = (
    ("idle", idle),
    ("people", people),
    ("empty", empty),
    ("strange", strange),
)
"""Speak against a candidate, and are weighed with all other signs."""
