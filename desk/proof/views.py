"""What the page is told, as it goes over the wire."""

from __future__ import annotations

from typing import Literal

from pydantic import BaseModel, ConfigDict

from extract.record import Because, Phase
from extract.rulings.model import Kind

Picture = Literal["video", "audio", ""]


class _View(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class FigureView(_View):
    """A figure that an item is about."""

    id: str
    """Of the measure; empty where it can't be ruled on by itself."""
    display: str
    what: str
    """What is measured, of what, where; may be empty."""
    other: str
    """The figure in the other system of units; may be empty."""
    stands: bool
    sure: float | None
    """Confidence of the ear, 0 to 1, two digits."""
    attribute: str | None
    item: str | None
    where: str | None
    phase: Phase


class ReadingView(_View):
    """Another figure that it may be."""

    figure: str
    """Id of the measure that it would amend."""
    text: str
    said: str
    """The words that sound like it; empty for a figure that was worked out."""
    because: Because


class RuledView(_View):
    """What was ruled, as the margin shows it."""

    act: str
    words: str


class CandidateView(_View):
    """A statement of an earlier session that a retraction may mean."""

    session: str
    """Folder of that session."""
    item: str
    """Id of the measure or step there."""
    title: str
    """Of that session."""
    date: str
    told: str
    """What it says: `temperature, blanket: 180 °F`."""
    again: int
    """How often it is said again there."""
    clock: str
    start: float
    end: float
    before: str
    quote: str
    after: str
    reasons: tuple[str, ...]
    """What speaks for it."""
    chosen: bool
    """It is the one that is taken to be meant."""
    picture: Picture
    address: str
    """Where that session's film and stills are asked for."""


class ItemView(_View):
    """Anything on the page that takes a ruling."""

    id: str
    kind: Kind
    group: str
    """Name of the group that it is listed in."""
    wanted: str
    """What is wanted of a person, in two or three words; empty where nothing is."""
    settled: bool
    title: str
    wording: str
    """Beside the title: the instruction of an unsure step, a tool's name in the whole shop; may be empty."""
    text: str
    """What an amendment in words begins from."""
    start: float
    end: float
    clock: str
    before: str
    quote: str
    after: str
    source: str
    because: Because
    """What an amended figure most likely was: said wrong, or heard wrong."""
    figures: tuple[FigureView, ...] = ()
    readings: tuple[ReadingView, ...] = ()
    traced: str = ""
    """Of a retraction of an earlier statement: how far it is known which one is meant; empty for any other item."""
    candidates: tuple[CandidateView, ...] = ()
    ruled: RuledView | None = None
    notes: tuple[str, ...] = ()


class LostView(_View):
    """A ruling that found no place, or a line of the log that is none."""

    id: str
    """Of the ruling; empty for a line that can't be read."""
    act: str
    words: str
    clock: str
    why: str


class LastView(_View):
    """The ruling that undo takes back, or redo gives again."""

    id: str
    item: str
    """Id of the item; empty for a pass of the whole."""
    words: str


class CountsView(_View):
    """How many there are of what the page lists, also where only the first of them are told."""

    queries: int
    settled: int
    figures: int
    steps: int
    kit: int
    errata: int
    unplaced: int


class StateView(_View):
    """All of one session that the page shows, or its beginning."""

    whole: bool
    """False where only the first queries are told, so that the first screen need not wait for the rest."""
    counts: CountsView

    title: str
    subject: str
    queries: tuple[ItemView, ...]
    figures: tuple[ItemView, ...]
    steps: tuple[ItemView, ...]
    struck: tuple[ItemView, ...]
    """Steps that were struck."""
    kit: tuple[ItemView, ...]
    """Tools and materials, those that were struck behind them."""
    errata: tuple[ItemView, ...]
    """What was taken back, what is left for later and what is to be looked up, what was added among them."""
    unplaced: tuple[LostView, ...]
    undo: LastView | None
    redo: LastView | None
    musts: int
    """What must be settled before publishing."""
    passed: bool
