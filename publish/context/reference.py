"""Reference figures, and tools and materials, as their templates are given them."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from publish.context.figures import Link
from publish.context.library import Telling
from publish.context.parts import SaidFor
from publish.context.plots import Plot
from publish.context.site_page import InnerPage
from publish.moments import Moment


@dataclass(frozen=True, slots=True)
class Tally:
    """What the figures of one phase come to."""

    phase: str
    """As found, aim, as left or rule of thumb; or all figures."""
    number: int
    """How many figures."""
    median: str
    """The middle one, in the unit that most were said in."""
    median_other: str
    """The same in the other system; may be empty."""
    span: str
    """From the least to the most."""
    span_other: str
    """The same in the other system; may be empty."""


@dataclass(frozen=True, slots=True)
class Usual:
    """Where such a figure usually lies in a trade."""

    text: str
    """The band with its unit: `0.05 to 0.12 in`."""
    other: str
    """The same in the other system, rounded; may be empty."""
    trade: str
    """The trade that has it."""
    source: str
    """Where it comes from."""


@dataclass(frozen=True, slots=True)
class ReferencePage(InnerPage):
    """All standing figures of one attribute of one thing."""

    what: str
    """What is measured, and of what."""
    index: Link
    """All reference figures."""
    tallies: tuple[Tally, ...]
    """By phase, and over all where there are several."""
    usual: tuple[Usual, ...]
    """Bands of the trades; may be empty."""
    plot: Plot | None
    """The figures on a scale; null where none can be put on it."""
    left_out: tuple[str, ...]
    """What median and range leave out, and why, a sentence each."""
    tellings: tuple[Telling | Markup, ...]
    """Every standing figure, oldest first; or its row, set before."""


@dataclass(frozen=True, slots=True)
class ReferenceEntry:
    """One line of the list of reference figures."""

    link: Link
    """Its page."""
    contents: str
    """How many figures of how many sessions."""
    tally: Tally | None
    """Over all its figures; null where none can be counted."""


@dataclass(frozen=True, slots=True)
class ReferenceIndex(InnerPage):
    """The list of reference figures."""

    entries: tuple[ReferenceEntry, ...]
    """By name."""


@dataclass(frozen=True, slots=True)
class Use:
    """The times that one session names a thing."""

    session: Link
    """The list of tools and materials on the session's page."""
    date: str
    """ISO 8601 date of the session; empty where unknown."""
    date_text: str
    """The date in words."""
    moments: tuple[Moment, ...]
    """Each time it is named as it is called in the shop."""
    otherwise: tuple[SaidFor, ...]
    """What else the session has for it, where a person named it for the whole shop; may be empty."""


@dataclass(frozen=True, slots=True)
class Thing:
    """A tool or a material."""

    name: str
    """As a person named it, else as it was first named."""
    uses: tuple[Use | Markup, ...]
    """The sessions that name it, oldest first; or the entry of one, set before."""


@dataclass(frozen=True, slots=True)
class KitPage(InnerPage):
    """Tools and materials of all sessions."""

    tools: tuple[Thing, ...]
    """By name."""
    materials: tuple[Thing, ...]
    """By name."""
