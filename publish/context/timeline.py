"""The session drawn to scale, like a steel rule graduated in time."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class Tick:
    """A graduation."""

    x: float
    """Place along the rule."""
    depth: int
    """How far it reaches in."""
    label: str
    """The time at a long one; empty elsewhere."""


@dataclass(frozen=True, slots=True)
class Mark:
    """Something that was said."""

    x: float
    """Place along the rule."""
    kind: Literal["figure", "step", "erratum"]
    """What it was."""


@dataclass(frozen=True, slots=True)
class Timeline:
    """The rule, its graduations and what was said along it."""

    label: str
    """The same in words, for who can't see it."""
    width: int
    """Length of the rule in the units of `x`."""
    inset: int
    """Where second 0 lies; the last second lies as far from the other end."""
    seconds: str
    """Length of the recording, as a plain number."""
    ticks: tuple[Tick, ...]
    """Graduations, in order."""
    marks: tuple[Mark, ...]
    """What was said, in order."""
