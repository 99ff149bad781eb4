"""The repair record: what other programs rely on.

These models are the single definition; the JSON Schema that is published beside the pages is generated from them
(`record_schema`). A field may be added, never renamed.
"""

from __future__ import annotations

from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, Field

Phase = Literal["as_found", "target", "as_left", "general"]
COMMON = "common practice, no source"
"""What stands as the source of a fact of the trade that no book was at hand for."""
Severity = Literal["stop", "look"]
Mode = Literal["done", "doing", "planned", "advice"]
Scope = Literal["this_session", "earlier_session"]
Because = Literal["said_wrong", "heard_wrong", "own_words"]
Verdict = Literal["stet", "amend", "strike", "add", "reorder", "merge", "split"]


class _Part(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True, populate_by_name=True)


class SessionFacts(_Part):
    """What session the record is of."""

    title: str
    date: str | None = Field(default=None, description="ISO 8601 date of the work")
    subject: str | None = Field(default=None, description="what is on the bench")
    trade: str | None = None
    source: str = Field(description="file name of the recording or caption file")
    duration: float = Field(description="seconds")


class Reading(_Part):
    """One way of hearing a figure."""

    text: str
    value: float | None = None
    unit: str | None = None
    score: float | None = None
    first_heard: bool = Field(default=False, description="true for what the first hearing had")


class Heard(_Part):
    """How sure the ear was of a figure, and what else it might have been."""

    confidence: float = Field(ge=0, le=1)
    readings: tuple[Reading, ...] = Field(default=(), description="what was decided first, then its rivals")
    near_tie: bool = Field(default=False, description="true where a rival sounds about as likely")


class Former(_Part):
    """What the machine had where a person amended it; null in a field that is as it was, or that had nothing."""

    display: str | None = Field(default=None, description="the figure in the form it was said")
    value: float | None = None
    low: float | None = None
    high: float | None = None
    unit: str | None = None
    attribute: str | None = None
    item: str | None = None
    where: str | None = None
    phase: Phase | None = None
    text: str | None = None
    mode: Mode | None = None


class Later(_Part):
    """The later session in which a statement was put right."""

    session: str = Field(description="name of its folder in the shop")
    title: str
    date: str | None = Field(default=None, description="ISO 8601 date of that session")
    correction: str = Field(description="id of the correction in that session's record")
    start: float = Field(description="seconds in that session's recording")
    replacement: str = Field(description="what holds instead, as it is told there")
    proposed: bool = Field(default=False, description="true while no person has confirmed that this statement is meant")


class Earlier(_Part):
    """The statement of an earlier session that a correction takes back."""

    session: str = Field(description="name of its folder in the shop")
    title: str
    date: str | None = Field(default=None, description="ISO 8601 date of that session")
    item: str = Field(description="id of the measure or step in that session's record")
    start: float = Field(description="seconds in that session's recording")
    quote: str
    proposed: bool = Field(default=False, description="true while no person has confirmed that this statement is meant")


class Ruled(_Part):
    """What a person decided of an item."""

    verdict: Verdict = Field(description="stet: let it stand; strike: it is out, kept only to be seen")
    ruling: str = Field(description="id of the ruling")
    because: Because | None = Field(
        default=None, description="of what was amended: said wrong on film, only heard wrong, or put in other words"
    )
    was: Former | None = Field(default=None, description="what the machine had, where a person amended it")
    later: Later | None = Field(
        default=None, description="the later session that put it right; null for what was ruled in this one's proof"
    )


class Measure(_Part):
    """One figure as said, and what it measures."""

    id: str
    cue: int = Field(ge=0, description="0-based index of the cue where the number starts")
    start: float
    end: float
    quote: str
    value: float
    low: float | None = None
    high: float | None = None
    unit: str | None = Field(description="a unit expression that pint reads; null where nothing settles it")
    unit_said: bool
    ucum: str | None = None
    attribute: str | None = None
    item: str | None = None
    where: str | None = None
    phase: Phase
    hedged: bool
    stands: bool = True
    corrected_by: str | None = None
    heard: Heard | None = None
    kind: str | None = Field(default=None, description="length, temperature, torque ...; null where no unit is known")
    limit: Literal["at_most", "at_least"] | None = Field(default=None, description="a one-sided limit")
    tolerance: float | None = Field(default=None, description="plus or minus this much, in `unit`")
    difference: bool = Field(default=False, description="a comparison: how much more or less, not a size")
    same_as: str | None = Field(default=None, description="id of the measure that this one restates in another unit")
    display: str = Field(default="", description="the figure in the form it was said: 5/64 in, 0.012 in, 2 to 3 thou")
    before: str = Field(default="", description="the words just before it, back to the figure before at most")
    after: str = Field(default="", description="the words just behind it, on to the next figure at most")
    ruling: Ruled | None = Field(default=None, description="what a person decided of it; null while nobody has")


class Withdrawn(_Part):
    """The statement that a correction takes back."""

    measure: str | None = None
    text: str
    cue: int | None = None


class Correction(_Part):
    """A statement taken back, and what holds instead."""

    id: str
    cue: int
    start: float
    end: float
    quote: str
    scope: Scope
    withdraws: Withdrawn
    replacement: str
    value: float | None = None
    unit: str | None = None
    replacement_measure: str | None = Field(default=None, description="id of the measure that holds instead")
    source: Literal["narration", "proof", "later_session"] = Field(
        default="narration",
        description="taken back on film, put right by a person who proofed the notes, or taken back in a later session",
    )
    earlier: Earlier | None = Field(
        default=None, description="of one of scope earlier_session: the statement meant, where that was found"
    )
    ruling: Ruled | None = None


class Finding(_Part):
    """Something to settle, or to look at, before the notes go out."""

    id: str
    kind: str
    severity: Severity
    cue: int
    cues: tuple[int, ...]
    start: float
    quote: str
    measures: tuple[str, ...]
    message: str
    source: str


class Step(_Part):
    """One action of the job, as an instruction that can be repeated."""

    id: str
    number: int
    cue_from: int
    cue_to: int
    start: float
    end: float
    quote: str
    text: str
    verb: str
    object: str
    mode: Mode
    measures: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()
    materials: tuple[str, ...] = ()
    ruling: Ruled | None = None


class Caution(_Part):
    """A hazard that was spoken of, with the usual caution."""

    cue: int
    start: float
    text: str
    source: str
    said: bool = Field(default=False, description="true where the speaker gave the caution")


class SaidAs(_Part):
    """A name of a tool or material as the session has it, and the cues that say it so."""

    sort: Literal["tool", "material"] = Field(description="what the session takes it for")
    name: str
    cues: tuple[int, ...]


class Mention(_Part):
    """A material or tool, and the cues that name it."""

    name: str
    cues: tuple[int, ...]
    id: str = Field(default="", description="given where a person ruled on it")
    ruling: Ruled | None = None
    said: tuple[SaidAs, ...] = Field(
        default=(), description="where a person named it for the whole shop: what this session has for it"
    )


class Remark(_Part):
    """A short clean sentence with its time: a follow-up or a doubt."""

    id: str = Field(default="", description="made from its words; empty in records of earlier versions")
    cue: int
    start: float
    text: str
    ruling: Ruled | None = None


class Record(_Part):
    """The structured repair record of one session."""

    schema_: Literal["spokeshave-record/1"] = Field(default="spokeshave-record/1", alias="schema")
    session: SessionFacts
    measures: tuple[Measure, ...] = ()
    corrections: tuple[Correction, ...] = ()
    findings: tuple[Finding, ...] = ()
    steps: tuple[Step, ...] = ()
    cautions: tuple[Caution, ...] = ()
    materials: tuple[Mention, ...] = ()
    tools: tuple[Mention, ...] = ()
    follow_ups: tuple[Remark, ...] = ()
    doubts: tuple[Remark, ...] = ()

    def to_json(self) -> str:
        """The record as JSON, the form that is printed, kept and published."""
        return self.model_dump_json(by_alias=True, indent=1)


def record_schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of a record."""
    schema = Record.model_json_schema(by_alias=True, mode="serialization")
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}
