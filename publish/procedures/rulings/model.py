"""A person's rulings on the procedure library: one frozen model a line of the shop's log.

Each line names the steps that it is on, session by session, since the machine's own clusters have no name that lasts.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, TypeAdapter

from extract.rulings.model import GivenLine
from publish.rulings.taking_back import TakeBack

FORMAT = "spokeshave-procedure-ruling/1"


class _Part(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)


class StepNamed(_Part):
    """A step: its id, and its words to find it again by where a new hearing gave it another id."""

    id: str = Field(min_length=1)
    words: str


class Version(_Part):
    """A procedure as one session did it: steps of that session."""

    session: str = Field(min_length=1)
    """Folder of the session."""
    steps: tuple[StepNamed, ...] = Field(min_length=1)


class _Line(GivenLine):
    format: Literal["spokeshave-procedure-ruling/1"] = "spokeshave-procedure-ruling/1"


class Rename(_Line):
    """Call a procedure by a name; its versions stay together."""

    act: Literal["rename"] = "rename"
    of: tuple[Version, ...] = Field(min_length=1)
    name: str = Field(min_length=1)


class Merge(_Line):
    """Make one procedure of several; the first one's name and pinned version hold."""

    act: Literal["merge"] = "merge"
    of: tuple[tuple[Version, ...], ...] = Field(min_length=2)


class Split(_Line):
    """Make two procedures of one."""

    act: Literal["split"] = "split"
    stay: tuple[Version, ...] = Field(min_length=1)
    apart: tuple[Version, ...] = Field(min_length=1)
    name: str = ""
    """Of what is set apart; empty to leave it to the machine."""


class Pin(_Line):
    """Prefer one version: it is shown first, and gets a bench card."""

    act: Literal["pin"] = "pin"
    of: tuple[Version, ...] = Field(min_length=1)
    version: Version


class Unpin(_Line):
    """Prefer no version any more."""

    act: Literal["unpin"] = "unpin"
    of: tuple[Version, ...] = Field(min_length=1)


class Undo(TakeBack, _Line):
    """Take a ruling back."""


OnProcedure = Rename | Merge | Split | Pin | Unpin
"""Rulings on procedures."""

Ruling = Annotated[OnProcedure | Undo, Field(discriminator="act")]
"""Any line of the log."""

ruling_adapter: TypeAdapter[Ruling] = TypeAdapter(Ruling)


def versions_of(ruling: OnProcedure) -> tuple[Version, ...]:
    """Every version that a ruling names."""
    if isinstance(ruling, Merge):
        return tuple(version for of in ruling.of for version in of)
    if isinstance(ruling, Split):
        return (*ruling.stay, *ruling.apart)
    return ruling.of
