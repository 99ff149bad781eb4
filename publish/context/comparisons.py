"""What a session measured, beside what all the shop's sessions measured of the same thing."""

from __future__ import annotations

from dataclasses import dataclass

from publish.context.figures import Link, Row
from publish.context.reference import Usual


@dataclass(frozen=True, slots=True)
class OwnFigure:
    """A figure of the session that stands on the plot."""

    row: Row
    """Its row on the page."""
    phase: str
    """As found, aim, as left or rule of thumb."""


@dataclass(frozen=True, slots=True)
class Comparison:
    """One thing that was measured in the session, and what the shop has measured of it."""

    what: str
    """What is measured, and of what."""
    plot: str
    """Address of the drawing, with the fragment that makes this session's figures stand out."""
    width: int
    """Of the drawing."""
    height: int
    """Of the drawing."""
    own: tuple[OwnFigure, ...]
    """This session's figures."""
    shop: str
    """What all figures come to, in words; empty where there are no others."""
    page: Link | None
    """All of them in a table; null where there are too few for a page."""
    usual: tuple[Usual, ...]
    """Bands of the session's trade; may be empty."""
