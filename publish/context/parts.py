"""The parts of a session page, as templates are given them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from publish.context.figures import Elsewhere, Link, Pair, Retraction, Row
from publish.context.timeline import Timeline
from publish.moments import Moment


@dataclass(frozen=True, slots=True)
class Query:
    """Something to settle, or to check, before the notes are relied on."""

    anchor: str
    """Id on the page."""
    must: bool
    """True where publishing should wait for it."""
    message: str
    """One sentence a person can act on."""
    quote: str
    """The words in question."""
    moment: Moment
    """When they were said."""
    source: str
    """Where the rule or the band comes from."""
    rows: tuple[Link, ...]
    """The figures concerned."""


@dataclass(frozen=True, slots=True)
class Stage:
    """One numbered step of the procedure."""

    anchor: str
    """Id on the page."""
    number: int
    """From 1."""
    text: str
    """An instruction that can be repeated, with a full stop."""
    mode: str
    """Empty, or that it was planned or advised rather than done."""
    rows: tuple[Row, ...]
    """Its figures."""
    tools: tuple[str, ...]
    """Tools used in it."""
    materials: tuple[str, ...]
    """Materials used in it."""
    moment: Moment
    """When it begins."""
    still: str | None
    """Address of a picture of it out of the film; null where there is none."""


@dataclass(frozen=True, slots=True)
class Hazard:
    """A caution and where it comes from."""

    text: str
    """The caution, a sentence."""
    source: str
    """Its source; empty where that is only that it was said."""
    said: bool
    """The speaker gave it."""
    moment: Moment
    """When it was said, or when the hazard was spoken of."""


@dataclass(frozen=True, slots=True)
class SaidFor:
    """Other words that a session has for a tool or material."""

    words: str
    """As the session has them."""
    moments: tuple[Moment, ...]
    """Each time it is named so."""


@dataclass(frozen=True, slots=True)
class Named:
    """A tool or material."""

    name: str
    """Its name in the shop."""
    moments: tuple[Moment, ...]
    """Each time it is named so."""
    otherwise: tuple[SaidFor, ...]
    """What else the session has for it, where a person named it for the whole shop; may be empty."""


@dataclass(frozen=True, slots=True)
class Remark:
    """Something left for later, or to look up."""

    text: str
    """A sentence."""
    moment: Moment
    """When it was said."""


@dataclass(frozen=True, slots=True)
class Erratum:
    """A statement that was taken back."""

    anchor: str
    """Id on the page."""
    wrong: str
    """What was said."""
    wrong_href: str | None
    """Where it stands on this page; null where it was said elsewhere."""
    wrong_moment: Moment | None
    """When it was said; null where it was said elsewhere."""
    right: str
    """What holds instead."""
    right_href: str | None
    """The row of the figure that holds; null where it is no figure."""
    moment: Moment
    """When it was taken back."""
    quote: str
    """The words that take it back."""
    scope: str
    """This session, or an earlier one."""
    in_proof: bool
    """It was not taken back on film, but by a person who proofed the notes."""
    later: Elsewhere | None
    """The later session that took it back; null where this session or its proof did."""
    earlier: Elsewhere | None
    """The statement of an earlier session that it takes back; null where none is known."""
    session: Link | None
    """The page it concerns or comes from, where that is another one."""


@dataclass(frozen=True, slots=True)
class Run:
    """Words of the transcript that are set alike."""

    text: str
    """The words."""
    href: str | None
    """The row of the figure that they say."""
    withdrawn: bool
    """They no longer stand."""
    note: Retraction | None
    """What to read instead, behind the last of the withdrawn words or of words that were heard wrong."""


@dataclass(frozen=True, slots=True)
class Spoken:
    """One cue of the transcript."""

    anchor: str
    """Id on the page: `t-83.2`."""
    moment: Moment
    """When it begins."""
    until: str
    """Second at which it ends, as a plain number."""
    runs: tuple[Run, ...]
    """Its words."""


@dataclass(frozen=True, slots=True)
class Player:
    """The recording beside the page."""

    kind: Literal["video", "audio"]
    """Which element plays it."""
    href: str
    """Its address."""
    name: str
    """Its file name."""
    captions: bool
    """Captions and chapters stand beside it."""
    corrections: bool
    """So do cues of what is put right."""
    timeline: Timeline
    """The session drawn to scale."""


@dataclass(frozen=True, slots=True)
class Summary:
    """The session in a few lines, worked out from the record."""

    bench: str
    """What was on the bench, a sentence."""
    pairs: tuple[Pair, ...]
    """The main figures as found and as left."""
    found: tuple[Row, ...]
    """Main figures as found that have no counterpart."""
    left: tuple[Row, ...]
    """Main figures as left that have no counterpart."""
    done: str
    """What was done, a sentence or two; may be empty."""
    open: tuple[Link, ...]
    """What is open, each with its place on the page."""


@dataclass(frozen=True, slots=True)
class Making:
    """How the page came to be."""

    heard_by: str
    """The model that heard it, or the caption file it was read from, a sentence."""
    times: str
    """How the seconds were found, a sentence; empty where there is no transcript."""
    proof: str
    """Whether a person has read it, a sentence."""


@dataclass(frozen=True, slots=True)
class Proof:
    """How far a person has proofed the page."""

    state: Literal["unsettled", "unread", "proofed"]
    """Statements wait for a person; nothing waits but nobody has read it; or a person has passed it."""
    text: str
    """That in words: `not proofed: 3 statements to settle`."""
