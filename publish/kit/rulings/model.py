"""A person's rulings on tools and materials: one frozen model a line of the shop's log.

Each line names what it is on by the words that sessions have for it, since those are all that a later session has too.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, TypeAdapter

from extract.rulings.model import GivenLine
from publish.rulings.taking_back import TakeBack

FORMAT = "spokeshave-kit-ruling/1"

Sort = Literal["tool", "material"]


class Said(BaseModel):
    """What a session has for a tool or material."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    sort: Sort
    """What the session takes it for."""
    name: str


class _Line(GivenLine):
    format: Literal["spokeshave-kit-ruling/1"] = "spokeshave-kit-ruling/1"


class Rename(_Line):
    """Call a thing by a name, whatever is said for it."""

    act: Literal["rename"] = "rename"
    of: tuple[Said, ...] = Field(min_length=1)
    name: str = Field(min_length=1)


class Merge(_Line):
    """Make one thing of several. It is a tool or a material as the first of all is."""

    act: Literal["merge"] = "merge"
    of: tuple[tuple[Said, ...], ...] = Field(min_length=2)
    name: str = Field(min_length=1)


class Split(_Line):
    """Make two things of one."""

    act: Literal["split"] = "split"
    stay: tuple[Said, ...] = Field(min_length=1)
    apart: tuple[Said, ...] = Field(min_length=1)
    kept: str = Field(min_length=1)
    """What is called so from now on that stays."""
    name: str = Field(min_length=1)
    """Of what is set apart."""


class Undo(TakeBack, _Line):
    """Take a ruling back."""


OnKit = Rename | Merge | Split
"""Rulings on tools and materials."""

Ruling = Annotated[OnKit | Undo, Field(discriminator="act")]
"""Any line of the log."""

ruling_adapter: TypeAdapter[Ruling] = TypeAdapter(Ruling)


def said_in(ruling: OnKit) -> tuple[Said, ...]:
    """Everything that a ruling names."""
    if isinstance(ruling, Merge):
        return tuple(said for of in ruling.of for said in of)
    if isinstance(ruling, Split):
        return (*ruling.stay, *ruling.apart)
    return ruling.of
