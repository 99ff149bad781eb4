"""The session drawn to scale, like a steel rule graduated in time."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from publish.moments import Moment


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


@dataclass(frozen=True, slots=True)
class Frame:
    """A still of the film above its place on the rule."""

    x: float
    """Left edge."""
    src: str
    """Address of the picture."""
    number: int
    """Number of the step that it belongs to."""
    moment: Moment
    """When that step begins."""
    lead: str
    """Path of the line down to its place."""


@dataclass(frozen=True, slots=True)
class Numbered:
    """The number of a step beneath the rule."""

    x: float
    """Its middle."""
    y: float
    """Base line."""
    number: int
    """As in the procedure."""


@dataclass(frozen=True, slots=True)
class JobLine:
    """The job drawn to scale: stills, steps with their numbers, figures and what was taken back."""

    label: str
    """The same in words, for who can't see it."""
    width: int
    """Of the drawing, in its own units."""
    height: float
    """Of the drawing."""
    frame_width: float
    """Of a still."""
    frame_height: float
    """Of a still."""
    top: float
    """Upper edge of the rule."""
    ticks: tuple[Tick, ...]
    """Graduations, in order."""
    marks: tuple[Mark, ...]
    """What was said, in order."""
    frames: tuple[Frame, ...]
    """Stills, in order; may be none."""
    numbers: tuple[Numbered, ...]
    """Numbers of steps; one that has no room beneath the rule is left out."""
