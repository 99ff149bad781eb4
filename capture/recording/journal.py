r"""Which pieces of a recording are on the disk: a line for each, behind the piece itself.

    {"schema": "spokeshave-recording/1", "file": "recording.weba", "port": 8137}
    {"piece": 0, "end": 16384, "second": 1.0}
    {"ended": 187.4}

A line that was only half written when the plug was pulled counts for nothing: its piece is sent again.
"""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field, TypeAdapter, ValidationError

from capture.errors import ShopError
from capture.files import write_atomic

NAME = "recording.journal"


class Header(BaseModel):
    """The first line."""

    model_config = ConfigDict(frozen=True, populate_by_name=True)

    schema_: Literal["spokeshave-recording/1"] = Field(default="spokeshave-recording/1", alias="schema")
    file: str
    """Name of the recording in the session's folder."""
    port: int = 0
    """Port of the server that took it; a page that is still open looks for it there. 0 where there was none."""


class Piece(BaseModel):
    """A piece that is on the disk."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    piece: int
    """Its number, from 0."""
    end: int
    """Bytes of the recording up to its end."""
    second: float
    """Second of the recording that it reaches, by the recorder's clock."""


class Ended(BaseModel):
    """The person ended the recording."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    ended: float
    """Its length in seconds, by the recorder's clock."""


Line = Piece | Ended
_LINE: TypeAdapter[Line] = TypeAdapter(Line)


@dataclass(frozen=True, slots=True)
class Journal:
    """A journal as it stands on the disk."""

    header: Header
    lines: tuple[Line, ...]
    size: int
    """Bytes of its whole lines."""

    @property
    def pieces(self) -> int:
        """Number of pieces on the disk."""
        return sum(isinstance(line, Piece) for line in self.lines)

    @property
    def end(self) -> int:
        """Bytes of the recording that are accounted for."""
        return max((line.end for line in self.lines if isinstance(line, Piece)), default=0)

    @property
    def second(self) -> float:
        """Second of the recording that it reaches."""
        return max((line.second if isinstance(line, Piece) else line.ended for line in self.lines), default=0.0)

    @property
    def ended(self) -> bool:
        """True where the person ended the recording."""
        return any(isinstance(line, Ended) for line in self.lines)


def begin_journal(folder: Path, header: Header) -> None:
    """Write a journal without pieces. Raises `OSError`."""
    write_atomic(folder / NAME, header.model_dump_json(by_alias=True) + "\n")


def read_journal(folder: Path) -> Journal | None:
    """The journal of a session's folder; null where there is none. Raises `ShopError` where it can't be read."""
    path = folder / NAME
    try:
        content = path.read_bytes()
    except FileNotFoundError:
        return None
    except OSError as error:
        raise ShopError(path, f"can't be read ({error.strerror})", "mend its permissions") from error
    first, *rest = content.splitlines(keepends=True) or [b""]
    try:
        header = Header.model_validate_json(first)
    except ValidationError as error:
        raise ShopError(
            path, "is no journal of a recording", "delete it; the recording beside it stays as it is"
        ) from error
    lines: list[Line] = []
    size = len(first)
    for raw in rest:
        line = _line(raw)
        if line is None:
            break
        lines.append(line)
        size += len(raw)
    return Journal(header, tuple(lines), size)


def append_line(journal: int, line: Line) -> None:
    """Append a line to an open journal and have the disk keep it. Raises `OSError`."""
    write_all(journal, line.model_dump_json().encode() + b"\n")
    os.fsync(journal)


def write_all(file: int, content: bytes) -> None:
    """Write all of `content` where an open file stands; the system may take less at a time. Raises `OSError`."""
    rest = memoryview(content)
    while rest:
        rest = rest[os.write(file, rest) :]


def _line(raw: bytes) -> Line | None:
    if not raw.endswith(b"\n"):
        return None
    try:
        return _LINE.validate_json(raw)
    except ValidationError:
        return None
