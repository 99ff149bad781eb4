"""What was said and when: one type for recordings that were heard and for captions that were read.

Times are seconds in the recording, as floats, from its first picture or sound, whichever its player shows as zero.
"""

from __future__ import annotations

from typing import Literal

from pydantic import BaseModel, ConfigDict, Field


class _Frozen(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)


class Word(_Frozen):
    """One word as written, punctuation included, and when it was said."""

    text: str
    start: float = Field(ge=0)
    end: float = Field(ge=0)
    probability: float | None = Field(default=None, ge=0, le=1)
    """How sure the ear was; null where the words came from captions."""


class Cue(_Frozen):
    """A breath group: the words of one caption."""

    start: float = Field(ge=0)
    end: float = Field(ge=0)
    text: str
    words: tuple[Word, ...]


class HeardReading(_Frozen):
    """One way of hearing a stretch of words."""

    text: str
    score: float
    """How far it lies below or above what was first heard, in nats: the sound's log probability, and sense."""
    why: str = ""
    """The confusion it rests on; empty for what was first heard."""


class HeardFigure(_Frozen):
    """A figure that was heard a second time, against what else it may have been."""

    start: float = Field(ge=0)
    end: float = Field(ge=0)
    first_heard: str
    """The words as the first hearing had them."""
    readings: tuple[HeardReading, ...]
    """What was decided, which stands in the cue, first; then its rivals, the likeliest first."""
    confidence: float = Field(ge=0, le=1)
    near_tie: bool = False
    """True where a rival comes so near that a person should listen."""


class Ear(_Frozen):
    """Which model heard a transcript, and with what in its mind."""

    model: str
    device: str
    compute_type: str
    prime: str
    """The sentence given as hotwords to every window; empty where there was none."""


class Transcript(_Frozen):
    """The words of one recording.

    `cues` are in order of time and don't overlap. `ear` is null for an imported caption file, and `word_times` tells
    whether each word was timed by the model or spread over its cue by length.
    """

    schema_: Literal["spokeshave-transcript/1"] = Field(default="spokeshave-transcript/1", alias="schema")
    source: str
    """File name of the recording or caption file."""
    duration: float = Field(ge=0)
    language: str = "en"
    ear: Ear | None = None
    word_times: Literal["heard", "spread"] = "heard"
    cues: tuple[Cue, ...]
    figures: tuple[HeardFigure, ...] = ()
    """The figures that were heard twice, in order; empty where there was no second hearing."""
    warnings: tuple[str, ...] = ()
    """What a person should know of the hearing, one line each: "the sound is damaged at 3:05 ..."."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True, populate_by_name=True)

    @property
    def text(self) -> str:
        """All cues as one running text."""
        return " ".join(cue.text for cue in self.cues)

    def to_json(self) -> str:
        """The transcript as JSON, the form kept on disk."""
        return self.model_dump_json(by_alias=True, indent=1)
