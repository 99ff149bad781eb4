"""The book of addresses of procedures that were published: kept in the shop, so that each goes on leading there.

procedure-addresses.json     machine-made, by address: the steps that it had while it was a procedure's own
"""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from capture.errors import ShopError
from capture.files import write_atomic

Kind = Literal["page", "card", "every"]
"""A procedure's page, its bench card, the page of every version."""
Steps = dict[str, tuple[str, ...]]
"""Ids of steps by session."""


class Lodged(BaseModel):
    """One address."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    slug: str = Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$")
    """Name of the page, without folder and ending."""
    steps: Steps
    """What the procedure was that last had it as its own."""
    has: tuple[Kind, ...] = ("page",)
    """What was published there."""
    to: str = ""
    """The address to which it led the last time; empty while it is a procedure's own."""


class Book(BaseModel):
    """All addresses of procedures that were ever published, the oldest first."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    format: Literal["spokeshave-procedure-addresses/1"] = "spokeshave-procedure-addresses/1"
    addresses: tuple[Lodged, ...] = ()


def read_book(path: Path) -> Book:
    """The book in a file, empty where there is none yet. Raises `ShopError` where it can't be read."""
    try:
        return Book.model_validate_json(path.read_bytes())
    except FileNotFoundError:
        return Book()
    except (OSError, ValidationError) as error:
        said = error.strerror if isinstance(error, OSError) else error.errors()[0]["msg"]
        raise ShopError(path, f"is no book of addresses ({said})", "put back the last good copy of it") from error


def write_book(path: Path, book: Book) -> None:
    """Write the book. Raises `ShopError` where the disk refuses."""
    try:
        write_atomic(path, book.model_dump_json(indent=None) + "\n")
    except OSError as error:
        raise ShopError(path, f"can't be written ({error.strerror})", "make room, then publish again") from error
