"""The two kinds of page, as their templates are given them."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from publish.context.comparisons import Comparison
from publish.context.figures import Link, Pair, RowGroup
from publish.context.parts import (
    Erratum,
    Hazard,
    Making,
    Named,
    Player,
    Proof,
    Query,
    Remark,
    Spoken,
    Stage,
    Summary,
)
from publish.context.site_page import SitePage
from publish.context.timeline import JobLine


@dataclass(frozen=True, slots=True)
class SessionPage:
    """Everything on one session's page."""

    title: str
    """Title of the session."""
    date: str
    """ISO 8601 date of the work; empty where unknown."""
    date_text: str
    """The date in words: `3 March 2025`."""
    subject: str
    """What is on the bench; may be empty."""
    trade: str
    """The trade; may be empty."""
    author: str
    """Who did the work; may be empty."""
    licence: str
    """Licence of the notes; may be empty."""
    shop: Link
    """The front page."""
    assets: str
    """Address of the shared assets' folder, with a slash behind."""
    address: str | None
    """The page's full address on the web; null where the shop has none."""
    length: str
    """How long the recording is: `8:20`."""
    language: str
    """BCP 47 language of what was said."""
    proof: Proof
    """How far a person has proofed it."""
    player: Player | None
    """The recording; null where the page has none."""
    summary: Summary
    """The session in a few lines."""
    note: Markup
    """The author's own words, sanitised; may be empty."""
    queries: tuple[Query, ...]
    """What a person has to settle or to check, the musts first."""
    pairs: tuple[Pair, ...]
    """Things measured before and after."""
    aims: bool
    """Some pair has an aim."""
    standing_caution: str
    """Stands on every page."""
    cautions: tuple[Hazard, ...]
    """Cautions of this session."""
    job: JobLine | None
    """The job drawn to scale; null where it has fewer than two steps."""
    stages: tuple[Stage, ...]
    """The procedure."""
    columns: tuple[str, ...]
    """Headings of the columns of figures: two, or one where no figure has a counterpart in other units."""
    groups: tuple[RowGroup, ...]
    """All figures, by phase."""
    comparisons: tuple[Comparison, ...]
    """Figures beside the shop's other figures of the same thing."""
    materials: tuple[Named, ...]
    """Materials, by first mention."""
    tools: tuple[Named, ...]
    """Tools, by first mention."""
    errata: tuple[Erratum, ...]
    """Statements taken back in this session."""
    later_errata: tuple[Erratum, ...]
    """Statements about the same work that a later session took back."""
    follow_ups: tuple[Remark, ...]
    """Left for later."""
    doubts: tuple[Remark, ...]
    """To look up."""
    history: tuple[Link, ...]
    """Other sessions on the same work, oldest first."""
    work: Link | None
    """The work's own page; null where it has none."""
    procedures: tuple[Link, ...]
    """The pages of its procedures over all sessions, each with the numbers of its steps here."""
    spoken: tuple[Spoken, ...]
    """The transcript."""
    making: Making
    """How the page was made."""
    files: tuple[Link, ...]
    """The machine-readable files beside the page."""
    beneath: str
    """A plain text to set beneath the film; empty where there is no recording."""
    linked_data: Markup
    """The procedure in schema.org terms, JSON that is safe inside a script element."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One session in the list of the front page."""

    href: str
    """Address of its page."""
    title: str
    """Title of the session."""
    date: str
    """ISO 8601 date."""
    date_text: str
    """The date in words."""
    subject: str
    """What is on the bench; may be empty."""
    trade: str
    """The trade; may be empty."""
    proof: Proof
    """How far a person has proofed it."""
    pairs: tuple[Pair, ...]
    """Its main figures as found and as left."""
    contents: tuple[str, ...]
    """What is in it: `9 steps`, `23 figures`, `2 errata`."""


@dataclass(frozen=True, slots=True)
class Shelf:
    """What of the library the front page leads to."""

    works: tuple[Link, ...] = ()
    """The page of each work, by name."""
    figures: Link | None = None
    """The reference figures; null where there are none."""
    kit: Link | None = None
    """Tools and materials; null where none is named."""
    procedures: Link | None = None
    """Procedures; null where no session has a step."""


@dataclass(frozen=True, slots=True)
class FrontPage(SitePage):
    """Everything on the front page."""

    entries: tuple[Entry | Markup, ...]
    """The sessions, newest first; or the entry of one, set before."""
    errata: tuple[Erratum | Markup, ...]
    """Statements of earlier sessions that later ones took back; or the entry of one, set before."""
    all_errata: Link | None
    """The page of all errata; null where there are none."""
    shelf: Shelf
    """The library."""
    schema: Link
    """The JSON Schema of the records."""
