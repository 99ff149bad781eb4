"""Links and figures, as templates are given them."""

from __future__ import annotations

from dataclasses import dataclass

from publish.moments import Moment


@dataclass(frozen=True, slots=True)
class Link:
    """A place on this page or another page of the site."""

    href: str
    """Relative address."""
    text: str
    """What the link says."""


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """A statement of another session."""

    href: str
    """Where it stands on that session's page, from the page that tells of it."""
    text: str
    """That session: `The Heron again (2032-03-02)`."""
    clock: str
    """When it was said, in that recording."""
    proposed: bool
    """The machine takes it to be this one; no person has said so."""
    said: str = ""
    """Its words, where they are the ones that were taken back; else empty."""


@dataclass(frozen=True, slots=True)
class Figure:
    """A figure in one system of units."""

    text: str
    """The figure with its unit: `5/64 in`."""
    said: bool
    """False where it was worked out from what was said."""
    about: bool
    """The speaker hedged it."""
    anchor: str | None
    """Id on the page, where this figure is a statement of its own that restates the row's figure."""
    moment: Moment | None
    """When it was said; null for a figure that was worked out."""


@dataclass(frozen=True, slots=True)
class Retraction:
    """That a statement was taken back, and what holds instead."""

    read: str
    """What holds instead, as a figure or in words."""
    href: str
    """Where that stands on this page."""


@dataclass(frozen=True, slots=True)
class Amended:
    """That a person who proofed the notes amended a figure, and what stood there."""

    how: str
    """`said on film`, `first heard as`, `put as`."""
    was: str
    """What stood there: `7/64 in`."""
    later: Elsewhere | None = None
    """The later session that put it right; null for what was found at this session's proof."""


@dataclass(frozen=True, slots=True)
class Flag:
    """That a figure has an open question."""

    href: str
    """Where the question stands on this page."""
    text: str
    """To settle, or to check."""
    must: bool
    """True where publishing should wait for it."""


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table of figures."""

    anchor: str
    """Id on the page."""
    what: str
    """What is measured: `string height`."""
    part: str
    """Of what and where: `saddle slot, treble side`; may be empty."""
    difference: bool
    """The figure compares two sizes."""
    first: Figure | None
    """The figure for the first column: as said, or in the units that the shop puts first."""
    second: Figure | None
    """The figure in the other units, said or worked out; null where there is none."""
    moment: Moment
    """When it was said."""
    withdrawn: Retraction | None
    """Set where the statement no longer stands."""
    amended: Amended | None
    """Set where a person amended it."""
    queries: tuple[Flag, ...]
    """Open questions about this figure."""


@dataclass(frozen=True, slots=True)
class RowGroup:
    """The figures of one phase."""

    phase: str
    """As found, aim, as left or rule of thumb."""
    rows: tuple[Row, ...]
    """In the order in which they were said."""


@dataclass(frozen=True, slots=True)
class Pair:
    """The same thing measured before and after."""

    what: str
    """What is measured."""
    part: str
    """Of what and where; may be empty."""
    found: tuple[Row, ...]
    """Figures as found, those that stand."""
    aim: tuple[Row, ...]
    """Figures aimed at; may be empty."""
    left: tuple[Row, ...]
    """Figures as left, those that stand."""
