"""A session's script, narration.toml: what is said, what stands in the picture meanwhile, and what it holds."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Literal, Self

from pydantic import BaseModel, ConfigDict, Field, model_validator

from demo_sessions.truth import Action, Figure, Gist, Misstatement, Quoted, TakenBack

Work = Literal["quiet", "scrape", "knock", "motor"]


class _Part(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class Line(_Part):
    """One line: a sentence or two read in one breath, and the work that follows it."""

    say: str
    picture: str = ""
    """Name of the scene, see demo_sessions.build.scenes; empty where the session is sound only."""
    pause: float | None = Field(default=None, ge=0)
    """Seconds of work before the next line; the script's `gap` where none is given."""
    work: Work = "quiet"
    """What the work sounds like."""
    measures: tuple[Figure, ...] = ()
    corrections: tuple[TakenBack, ...] = ()
    faults: tuple[Misstatement, ...] = ()
    steps: tuple[Action, ...] = ()
    cautions: tuple[Gist, ...] = ()
    follow_ups: tuple[Gist, ...] = ()
    doubts: tuple[Gist, ...] = ()

    @model_validator(mode="after")
    def _quotes_are_said(self) -> Self:
        quoted: tuple[Quoted, ...] = (*self.measures, *self.corrections, *self.faults)
        for noted in quoted:
            if noted.quote not in self.say:
                raise ValueError(f"{noted.quote!r} is not in {self.say!r}")
        return self


class Mentions(_Part):
    """Materials and tools that are named."""

    materials: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()


class Script(_Part):
    """A whole script."""

    voice: Literal["joe", "rms"]
    pace: float = Field(gt=0)
    """How drawn out the speech is: 1 is the voice's own pace, more is slower."""
    gap: float = Field(ge=0)
    """Seconds of quiet between two lines."""
    people: tuple[str, ...]
    """The invented people whose words these are."""
    line: tuple[Line, ...]
    mentions: Mentions


def load_script(session: Path) -> Script:
    """The script of a session folder."""
    return Script.model_validate(tomllib.loads((session / "narration.toml").read_text(encoding="utf-8")))
