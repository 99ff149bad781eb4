"""A plot of figures, worked out to the point where a template only has to draw it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True, slots=True)
class Spot:
    """One figure on a plot."""

    x: float
    """From the left."""
    y: float
    """From the top."""
    phase: str
    """as_found, target, as_left or general: the shape of the mark."""
    reach: float
    """Half the length of the bar of a range, from the spot to either end; 0 for a single figure."""


@dataclass(frozen=True, slots=True)
class Caption:
    """Words on a plot."""

    x: float
    """From the left."""
    y: float
    """Base line, from the top."""
    text: str
    """What stands there."""
    anchor: Anchor
    """Which part of the words stands at x."""


@dataclass(frozen=True, slots=True)
class Plot:
    """A drawing of figures on a scale."""

    label: str
    """What the drawing shows, for those who don't see it."""
    width: int
    """Of the drawing, in its own units."""
    height: int
    """Of the drawing, in its own units."""
    upright: bool
    """The scale stands upright, so that bars of ranges do."""
    bands: tuple[tuple[float, float, float, float], ...]
    """The usual ranges, drawn behind: x, y, width and height."""
    lines: str
    """Path of the axes and their graduations."""
    rule: str
    """Path of the medians (of one figure there is none) or of the course of the figures; may be empty."""
    spots: tuple[Spot, ...]
    """The figures."""
    captions: tuple[Caption, ...]
    """Words at the graduations."""
    key: tuple[tuple[str, str], ...]
    """The phases that are drawn: name of the shape, and what it stands for."""


@dataclass(frozen=True, slots=True)
class Own:
    """The figures of one session on a plot of many sessions."""

    anchor: str
    """Id within the drawing: a page that shows it with this fragment has them stand out."""
    spots: tuple[Spot, ...]
    """The figures."""


@dataclass(frozen=True, slots=True)
class ShopPlot:
    """A drawing of what all sessions measured of one thing, in a file of its own, that their pages show."""

    title: str
    """What is measured, and of what."""
    desc: str
    """The same in words: how many figures, their median and range by phase, and the usual range."""
    told: str
    """How many figures of how many sessions and their median, as it stands in the drawing; empty for one session."""
    plot: Plot
    """The drawing."""
    own: tuple[Own, ...]
    """The figures of each session."""
