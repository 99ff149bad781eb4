"""Procedures over all sessions, as their templates are given them."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from publish.context.figures import Link, Row
from publish.context.library import Telling
from publish.context.parts import Proof
from publish.context.plots import Plot
from publish.context.reference import Tally
from publish.context.site_page import InnerPage
from publish.moments import Moment


@dataclass(frozen=True, slots=True)
class Measured:
    """The figures of one thing, over all versions."""

    anchor: str
    """Id on the page."""
    what: str
    """What is measured, and of what."""
    tallies: tuple[Tally, ...]
    """By phase; empty where none can be counted."""
    plot: Plot | None
    """On a scale; null where fewer than three sessions have one."""
    tellings: tuple[Telling, ...]
    """Each with its session and second, oldest first; empty where the page of every version has them."""
    sessions: int
    """How many sessions measured it."""


@dataclass(frozen=True, slots=True)
class Place:
    """Where a version has a step."""

    session: Link
    """The step on its session's page."""
    moment: Moment
    """When it begins on the film."""


@dataclass(frozen=True, slots=True)
class Variant:
    """A step in the words of one version or of several, which differ in figures alone."""

    text: str
    """An instruction, a sentence; of several the newest one's."""
    times: str
    """How many versions have it so; empty where that is to be seen."""
    at: tuple[Place, ...]
    """Oldest first; the newest one alone where the page of every version has the others."""
    note: str
    """Empty, or that it was done in another order, planned or advised."""


@dataclass(frozen=True, slots=True)
class StageOver:
    """A step of the procedure, over all versions."""

    anchor: str
    """Id on the page."""
    number: int
    """From 1."""
    text: str
    """In the words that stand for all, a sentence."""
    share: str
    """How many versions have it: `in all 4`, `in 3 of 4`."""
    every: bool
    """All versions have it."""
    variants: tuple[Variant, ...]
    """The words of the versions, the most usual first."""
    more: str
    """How many other ways there are of saying it; empty where all are here."""
    figures: tuple[Measured, ...]
    """What was measured in it."""


@dataclass(frozen=True, slots=True)
class VersionTold:
    """The procedure as one session did it."""

    session: Link
    """Its first step on the session's page."""
    date: str
    """ISO 8601; empty where unknown."""
    date_text: str
    """The date in words."""
    subject: str
    """What was on the bench; may be empty."""
    proof: Proof
    """How far a person has proofed the session."""
    moment: Moment
    """When it begins on the film."""
    length: str
    """How long the film takes over it."""
    steps: str
    """How many steps it has there."""
    preferred: bool
    """A person prefers it."""


@dataclass(frozen=True, slots=True)
class FullStep:
    """A step of one version."""

    number: int
    """From 1."""
    text: str
    """An instruction, a sentence."""
    mode: str
    """Empty, or that it was planned or advised."""
    href: str
    """The session's page."""
    moment: Moment
    """When it begins on the film."""
    rows: tuple[Row, ...]
    """Its figures."""


@dataclass(frozen=True, slots=True)
class InFull:
    """One version in full."""

    name: str
    """Id of its heading: `preferred`, `newest`."""
    heading: str
    """Why it is here."""
    session: Link
    """Its session."""
    steps: tuple[FullStep, ...]
    """In order of work."""
    card: Link | None
    """Its bench card."""


@dataclass(frozen=True, slots=True)
class VersionInFull:
    """A version on the page of every version."""

    anchor: str
    """Id on the page."""
    told: VersionTold
    """When, on what, how long."""
    steps: tuple[FullStep, ...]
    """In order of work."""
    loose: tuple[tuple[str, Row], ...]
    """Its other figures, each with its phase."""
    href: str
    """The session's page."""


@dataclass(frozen=True, slots=True)
class FilmTime:
    """How long the films take over a procedure."""

    number: int
    """How many films."""
    median: str
    """As a clock shows it."""
    span: str
    """From the least to the most; the same as the median where there is one."""


@dataclass(frozen=True, slots=True)
class CautionOver:
    """A caution, with each time it was called for."""

    text: str
    """A sentence."""
    source: str
    """Where it comes from; empty where that is only that it was said."""
    said: bool
    """Somebody gave it at the bench."""
    at: tuple[Place, ...]
    """The sessions and seconds, the oldest first; the newest ones alone where there are many."""
    more: str
    """In how many more; empty where all are here."""


@dataclass(frozen=True, slots=True)
class NamedOver:
    """A tool or material."""

    name: str
    """As it was first named."""
    versions: int
    """How many versions name it."""


@dataclass(frozen=True, slots=True)
class ProcedurePage(InnerPage):
    """A procedure over all sessions that did it."""

    name: str
    """What it is called."""
    by_hand: bool
    """A person named it."""
    index: Link
    """All procedures."""
    done: str
    """How often, and in how many sessions."""
    time: FilmTime
    """How long it takes on film."""
    in_full: tuple[InFull, ...]
    """The version that a person prefers, and, where many are told briefly, the newest."""
    versions: tuple[VersionTold, ...]
    """Newest first."""
    every: Link | None
    """The page of every version, where many are told briefly here."""
    stages: tuple[StageOver, ...]
    """Steps in order of work; where it was done often, those that more than one version has."""
    once: tuple[StageOver, ...]
    """Steps that only one version has, where it was done often."""
    left_out: str
    """How many such steps the page of every version alone has; may be empty."""
    figures: tuple[Measured, ...]
    """What was found, aimed at and left; where many versions are told briefly, what most measured."""
    others: tuple[Measured, ...]
    """What fewer measured, and more than one."""
    standing_caution: str
    """Stands on every page."""
    cautions: tuple[CautionOver, ...]
    """Of its course."""
    elsewhere: tuple[CautionOver, ...]
    """Of the rest of the same sessions."""
    tools: tuple[NamedOver, ...]
    """Most often named first."""
    materials: tuple[NamedOver, ...]
    """Most often named first."""


@dataclass(frozen=True, slots=True)
class EveryPage(InnerPage):
    """Every version of a procedure in full."""

    name: str
    """What the procedure is called."""
    procedure: Link
    """The procedure's page."""
    done: str
    """How often, and in how many sessions."""
    standing_caution: str
    """Stands on every page."""
    cautions: tuple[CautionOver, ...]
    """Of its course, and of the rest of the same sessions."""
    versions: tuple[Markup, ...]
    """Newest first, set before."""


@dataclass(frozen=True, slots=True)
class MovedPage(InnerPage):
    """A page at an address that a procedure had, which leads to where that is now.

    Its `address` is that of the page to which it leads, where the shop names one on the web.
    """

    to: Link
    """The page to which it leads."""


@dataclass(frozen=True, slots=True)
class ProcedureEntry:
    """A line of the list of procedures."""

    link: Link
    """Its page, or the step of the one session that did it."""
    contents: str
    """How many sessions and steps."""
    trades: str
    """The trades of its sessions; may be empty."""
    time: FilmTime
    """How long it takes on film."""
    preferred: bool
    """A version of it is preferred."""


@dataclass(frozen=True, slots=True)
class ProcedureIndex(InnerPage):
    """The list of procedures."""

    entries: tuple[ProcedureEntry, ...]
    """Those with a preferred version first, then those done most often."""
    once: tuple[ProcedureEntry, ...]
    """Done in one session only."""
