"""What a demo session contains: the format of truth.json, and how to read one.

A demo session was scripted, so what a careful reader should find in it is known, and when it is said. Seconds are those
of the recording. `start` of a sentence and of a figure comes from the synthesiser's own timing of its sounds, good to
about a tenth of a second; everything else starts where its sentence does, unless its quote starts later.

Conventions: a quote is the words as scripted, figures spelled out. `unit` is a unit expression that pint reads, and
`unit_said` is false where the context supplies it. `attribute` and `item` list accepted names, the most usual first. A
range has `low` and `high` and its midpoint as `value`. `stands` is false where the same recording takes the figure
back, and for a figure of an earlier session that is repeated to be taken back; a withdrawn figure that is said again
while it is corrected is a measure of its own. Faults are misstatements that nobody corrects in the recording.
"""

from __future__ import annotations

from pathlib import Path
from typing import Literal, Self

from pydantic import BaseModel, ConfigDict, Field, model_validator

from extract.record import Mode, Phase, Scope

FaultKind = Literal["conversion", "arithmetic", "conflict", "implausible", "dimension", "unit_missing"]

HERE = Path(__file__).parent


class _Part(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", populate_by_name=True)


class Quoted(_Part):
    """Something that is said at one place."""

    quote: str
    """The words as scripted."""


class Figure(Quoted):
    """A quantity that is said, as scripted."""

    value: float
    low: float | None = None
    high: float | None = None
    unit: str
    unit_said: bool = True
    attribute: tuple[str, ...] = Field(min_length=1)
    item: tuple[str, ...] = ()
    phase: Phase
    hedged: bool = False
    stands: bool = True

    @model_validator(mode="after")
    def _range_is_whole(self) -> Self:
        if (self.low is None) != (self.high is None):
            raise ValueError(f"{self.quote!r}: a range needs both low and high")
        if self.low is not None and self.high is not None and self.value != (self.low + self.high) / 2:
            raise ValueError(f"{self.quote!r}: the value of a range is its midpoint")
        return self


class TakenBack(Quoted):
    """A statement that is taken back, and what holds instead."""

    scope: Scope
    withdraws: str
    replacement: str
    value: float | None = None
    unit: str | None = None


class Misstatement(Quoted):
    """Something wrong that stands uncorrected in the recording."""

    kind: FaultKind
    why: str


class Action(_Part):
    """One step of the job."""

    verb: str
    object: str
    mode: Mode


class Gist(_Part):
    """A caution, follow-up or doubt, in a few words."""

    gist: str


class TimedFigure(Figure):
    """A figure with the second at which its first word starts."""

    start: float = Field(ge=0)


class TimedTakenBack(TakenBack):
    """A correction with the second at which it is made."""

    start: float = Field(ge=0)


class TimedMisstatement(Misstatement):
    """A fault with the second at which its quote starts."""

    start: float = Field(ge=0)


class TimedAction(Action):
    """A step with the second at which its sentence starts."""

    start: float = Field(ge=0)


class TimedGist(Gist):
    """A caution, follow-up or doubt with the second at which its line starts."""

    start: float = Field(ge=0)


class Sentence(_Part):
    """One line of the script, as read, with its seconds."""

    text: str
    start: float = Field(ge=0)
    end: float = Field(ge=0)


class Truth(_Part):
    """Everything that truth.json holds."""

    schema_: Literal["spokeshave-demo-truth/1"] = Field(default="spokeshave-demo-truth/1", alias="schema")
    title: str
    subject: str
    date: str
    trade: str
    recording: str
    duration: float
    invented: str
    """Says that the people and things are made up."""
    voice: str
    sentences: tuple[Sentence, ...]
    measures: tuple[TimedFigure, ...]
    corrections: tuple[TimedTakenBack, ...]
    faults: tuple[TimedMisstatement, ...]
    steps: tuple[TimedAction, ...]
    cautions: tuple[TimedGist, ...]
    materials: tuple[str, ...]
    tools: tuple[str, ...]
    follow_ups: tuple[TimedGist, ...]
    doubts: tuple[TimedGist, ...]

    def to_json(self) -> str:
        """The truth as JSON, the form that is kept."""
        return self.model_dump_json(by_alias=True, indent=1) + "\n"


def slugs() -> tuple[str, ...]:
    """Folder names of the demo sessions, in order of their dates."""
    return ("old-bustard-bridge", "seized-pedal", "old-bustard-settled")


def folder(slug: str) -> Path:
    """The folder of a demo session."""
    return HERE / slug


def load_truth(slug: str) -> Truth:
    """What a demo session contains."""
    return Truth.model_validate_json((folder(slug) / "truth.json").read_bytes())
