"""The pages of the library, as their templates are given them."""

from __future__ import annotations

from dataclasses import dataclass

from publish.context.figures import Link, Pair, Row
from publish.context.parts import Erratum, Proof
from publish.context.plots import Plot
from publish.context.site_page import InnerPage
from publish.moments import Moment


@dataclass(frozen=True, slots=True)
class Telling:
    """One standing figure of a session."""

    row: Row
    """The figure as its session's page has it."""
    phase: str
    """As found, aim, as left or rule of thumb."""
    session: Link
    """Where it stands on the session's page."""
    date: str
    """ISO 8601 date of the session; empty where unknown."""
    date_text: str
    """The date in words."""
    moment: Moment
    """When it was said."""
    settled: bool
    """False where a question about it has to be settled first."""


@dataclass(frozen=True, slots=True)
class Sitting:
    """One session in the history of a work."""

    href: str
    """Address of its page."""
    title: str
    """Title of the session."""
    date: str
    """ISO 8601 date; empty where unknown."""
    date_text: str
    """The date in words."""
    proof: Proof
    """How far a person has proofed it."""
    done: str
    """The main steps, a sentence; may be empty."""
    pairs: tuple[Pair, ...]
    """Things measured before and after."""
    found: tuple[Row, ...]
    """Other standing figures as found."""
    left: tuple[Row, ...]
    """Other standing figures as left."""


@dataclass(frozen=True, slots=True)
class Course:
    """One thing measured more than once on a work."""

    anchor: str
    """Id on the page."""
    what: str
    """What is measured, of what and where."""
    tellings: tuple[Telling, ...]
    """Its figures, oldest first."""
    plot: Plot | None
    """The figures over the dates; null where they can't be put on one scale."""


@dataclass(frozen=True, slots=True)
class Matter:
    """Something a session left for later or to look up."""

    text: str
    """A sentence."""
    moment: Moment
    """When it was said."""
    session: Link
    """The session, at that part of its page."""
    date: str
    """ISO 8601 date of the session; empty where unknown."""
    date_text: str
    """The date in words."""


@dataclass(frozen=True, slots=True)
class WorkPage(InnerPage):
    """The page of one work: everything the shop's sessions tell of it."""

    subject: str
    """What the work is."""
    sittings: tuple[Sitting, ...]
    """Its sessions, oldest first."""
    courses: tuple[Course, ...]
    """What was measured more than once."""
    procedures: tuple[Link, ...]
    """The procedures that were done on it, by name."""
    follow_ups: tuple[Matter, ...]
    """Left for later, over all sessions."""
    doubts: tuple[Matter, ...]
    """To look up, over all sessions."""
    errata: tuple[Erratum, ...]
    """What its sessions took back."""
