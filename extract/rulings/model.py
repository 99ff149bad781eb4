"""A person's rulings: one frozen model a line of the log.

The words are the proofreader's: *stet* lets the machine's reading stand, *amend* puts another in its place, *strike*
takes an item out, *add* puts in what was missed. `undo` takes a ruling back and `redo` gives it again; both are lines
of their own, since a line once written is never changed.
"""

from __future__ import annotations

from datetime import UTC, datetime
from fractions import Fraction
from typing import Annotated, Literal, Self
from uuid import uuid4

from pydantic import AwareDatetime, BaseModel, ConfigDict, Field, TypeAdapter, field_validator, model_validator

from extract.record import Because, Later, Mode, Phase
from extract.rulings.made import new_id
from extract.units import unit_rows

Kind = Literal["measure", "correction", "finding", "step", "follow_up", "doubt", "tool", "material"]
"""What can be ruled on. A caution can't: it stays on the page."""

NAMED_ONCE: frozenset[Kind] = frozenset({"tool", "material"})
"""Kinds of which a record names each one once, with no second of its own."""


class _Part(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)


class Item(_Part):
    """What a ruling is on: its id, and what to find it again by where a new hearing gave it another id."""

    kind: Kind
    id: str = Field(min_length=1)
    words: str
    """As said; of a finding its message, of a follow-up or doubt its text, of a tool or material its name."""
    start: float = Field(ge=0)
    """Seconds in the recording; 0 for a tool or material, which is named at several."""
    cue: int = Field(ge=0)
    """0-based index of the cue."""
    figures: tuple[str, ...] = ()
    """The figures that stood when the ruling was given: "5/64 in"; of a finding, those of its measures."""


class Figure(_Part):
    """A figure that a person gave, read once, when it was given, so that no later grammar reads it otherwise."""

    text: str
    """As the person wrote it."""
    value: Fraction
    """Exact, in `unit`; of a range its midpoint."""
    low: Fraction | None = None
    high: Fraction | None = None
    unit: str | None = None
    """Name of a unit of data/units.toml; null where the person said that there is none."""
    hedged: bool = False
    limit: Literal["at_most", "at_least"] | None = None
    tolerance: Fraction | None = None
    display: str
    """As it is shown: "7/64 in"."""

    @field_validator("unit")
    @classmethod
    def _on_the_list(cls, unit: str | None) -> str | None:
        if unit is not None and unit not in unit_rows():
            raise ValueError(f"no unit is called {unit!r}")
        return unit


class Changes(_Part):
    """What is put in the place of what the machine had. Null leaves a field as it is; an empty text clears it."""

    figure: Figure | None = None
    """Of a measure, or the right figure of an added correction."""
    attribute: str | None = None
    item: str | None = None
    where: str | None = None
    phase: Phase | None = None
    text: str | None = None
    """Of a step, follow-up or doubt; of a correction, what holds instead; of a tool or material, its name."""
    mode: Mode | None = None
    """Of a step."""

    @property
    def named(self) -> frozenset[str]:
        """Names of the fields that change."""
        return frozenset(name for name in type(self).model_fields if getattr(self, name) is not None)


class Portion(_Part):
    """One of the steps that a step is split into."""

    text: str = Field(min_length=1)
    measures: tuple[str, ...] | None = None
    """Ids of its measures; null to give it those whose figure its text shows."""


class GivenLine(_Part):
    """What every line of any log holds: who gave it, and when.

    The format stands in every line too, since lines of several years and versions stand in one log, and a line must be
    readable where the ones before it are not.
    """

    id: str = Field(default_factory=lambda: uuid4().hex, min_length=8, max_length=64, pattern=r"^[A-Za-z0-9_-]+$")
    """Made by who gives the ruling, so that the same one sent twice is kept once."""
    at: AwareDatetime = Field(default_factory=lambda: datetime.now(UTC))
    """When it was given, UTC."""
    by: str = ""
    """Who gave it."""

    @field_validator("at")
    @classmethod
    def _in_utc(cls, at: datetime) -> datetime:
        return at.astimezone(UTC)


class _Line(GivenLine):
    """What every line of a session's log holds."""

    format: Literal["spokeshave-ruling/1"] = "spokeshave-ruling/1"


class Stet(_Line):
    """Let it stand as the machine has it.

    Of a measure: the figure is right as heard. Of a correction: it was one. Of a finding: settled, the statement
    stands. Of a doubt: looked up, and settled. Of a step: it is a step. Earlier amending and striking of the item falls
    away.
    """

    act: Literal["stet"] = "stet"
    on: Item


class Amend(_Line):
    """Put something else in the place of what the machine had; rewording a step is amending its text."""

    act: Literal["amend"] = "amend"
    on: Item
    to: Changes
    because: Because | None = None
    """Of a measure whose figure changes, always given. Only what was said wrong makes an erratum."""
    overrule: bool = False
    """The person was told that the unit does not fit what is measured, and means it."""
    later: Later | None = None
    """The later session whose talk puts it right; such an amendment is worked out, and stands in no log."""


class Strike(_Line):
    """Take it out. A struck measure stays in the record as struck; a struck correction was none, and what it took back
    stands again; a struck finding was a false alarm."""

    act: Literal["strike"] = "strike"
    on: Item


class Note(_Line):
    """A remark for whoever proofs, on an item; changes nothing."""

    act: Literal["note"] = "note"
    on: Item
    text: str = Field(min_length=1)


class Add(_Line):
    """Put in what the machine missed, at a second. `on` is the new item: its id, its words as said, its place."""

    act: Literal["add"] = "add"
    on: Item
    to: Changes
    withdraws: Item | None = None
    """Of a correction: the measure that it takes back."""
    beside: tuple[str, ...] = ()
    """Of a measure: ids of the machine's measures near it then, so that one which it finds later is told from them."""
    overrule: bool = False

    @model_validator(mode="after")
    def _has_its_own_id(self) -> Self:
        if self.on.id != new_id(self.on.kind, self.id):
            raise ValueError("the id of what is put in must be made from the ruling's")
        return self


class Reorder(_Line):
    """Put a step directly behind another."""

    act: Literal["reorder"] = "reorder"
    on: Item
    after: Item | None = None
    """Null for the first place."""


class Merge(_Line):
    """Make one step of several. It keeps the id and place of the one it is on."""

    act: Literal["merge"] = "merge"
    on: Item
    others: tuple[Item, ...] = Field(min_length=1)
    """The steps that are merged into it, in the order in which they are done."""
    text: str = ""
    """The new instruction; empty to join those there are."""


class Split(_Line):
    """Make several steps of one. The first keeps its id; the others have ids made from the ruling's."""

    act: Literal["split"] = "split"
    on: Item
    into: tuple[Portion, ...] = Field(min_length=2)


class Elsewhere(_Part):
    """An item of another session of the shop."""

    session: str = Field(min_length=1)
    """Name of its folder."""
    item: Item


class Retract(_Line):
    """Of a correction of something said in an earlier session: which statement it takes back."""

    act: Literal["retract"] = "retract"
    on: Item
    statement: Elsewhere | None = None
    """Null where the person said that it is none of those which the shop has."""


class Pass(_Line):
    """Passed for press: a person has held the whole record against the recording."""

    act: Literal["pass"] = "pass"
    record: str
    """Digest of the machine's record that was passed; another record needs another pass."""


class Undo(_Line):
    """Take a ruling back."""

    act: Literal["undo"] = "undo"
    of: str
    """Id of the ruling."""


class Redo(_Line):
    """Give a ruling again that was taken back."""

    act: Literal["redo"] = "redo"
    of: str
    """Id of the ruling."""


OnItem = Stet | Amend | Strike | Note | Add | Reorder | Merge | Split | Retract
"""Rulings on one item."""

Ruling = Annotated[OnItem | Pass | Undo | Redo, Field(discriminator="act")]
"""Any line of the log."""

ruling_adapter: TypeAdapter[Ruling] = TypeAdapter(Ruling)
"""Reads and checks a ruling from JSON: `ruling_adapter.validate_json(line)`."""
