"""What comes of a record and a person's rulings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from extract.record import Record
from extract.rulings.errors import RulingError
from extract.rulings.model import Item, Note, OnItem, Pass

Rank = Literal["stop", "near_tie", "retraction", "correction", "look", "doubt", "step"]
"""Why something is open, the worst first: it must be settled; another figure sounds as likely; something of an earlier
session is taken back, and nobody has said what; a correction nobody has accepted or denied; worth a look; the speaker
was in doubt; the machine was unsure whether or what a step is."""

RANKS: tuple[Rank, ...] = ("stop", "near_tie", "retraction", "correction", "look", "doubt", "step")


@dataclass(frozen=True, slots=True)
class Open:
    """Something that waits for a person."""

    item: Item
    """What to rule on."""
    rank: Rank
    message: str
    """What to decide, a sentence."""


@dataclass(frozen=True, slots=True)
class Decided:
    """Something that is off the list, or off the page, by a ruling."""

    item: Item
    ruling: str
    """Id of the ruling that did it; undo that one to have it back."""


@dataclass(frozen=True, slots=True)
class Unplaced:
    """A ruling in force that changes nothing, since what it is on can't be found. It is shown, never dropped."""

    ruling: OnItem
    """As it was given, with the words it is on."""
    why: str
    """A few words: "nothing like it is in the record now"."""


@dataclass(frozen=True, slots=True)
class Proofed:
    """A record as a person has it."""

    record: Record
    """What is published. Amended figures stand in it with `ruling.was`, struck measures with `stands` false; struck
    steps, remarks and corrections, and settled findings and doubts are not in it."""
    machine: Record
    """What the machine made, unchanged."""
    in_force: tuple[OnItem | Pass, ...] = ()
    """The rulings that hold, in the order and words in which they were given."""
    placed: Mapping[str, str] = field(default_factory=dict)
    """The id of the item that each ruling is on now, by the ruling's id."""
    open: tuple[Open, ...] = ()
    """What waits for a person, the worst first, and within a rank in order of speaking."""
    settled: tuple[Decided, ...] = ()
    """Findings and doubts that were settled."""
    struck: tuple[Decided, ...] = ()
    """Items that were struck, measures included."""
    notes: tuple[Note, ...] = ()
    """Notes in force, each on its item."""
    unplaced: tuple[Unplaced, ...] = ()
    kept: int = 0
    """How many rulings in force were placed by id."""
    moved: int = 0
    """How many were placed by words and time."""
    passed: bool = False
    """A person has passed this very record, and nothing in it must still be settled."""
    items: Mapping[str, Item] = field(default_factory=dict)
    """Everything that may be ruled on, by id, what was struck or settled included."""

    def item(self, item_id: str) -> Item:
        """The item with an id. Raises `RulingError` where there is none."""
        try:
            return self.items[item_id]
        except KeyError:
            remedy = "load the proof again; the session may have been heard anew"
            raise RulingError(f"there is no item {item_id!r}", remedy) from None
