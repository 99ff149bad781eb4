"""A log on disk of what a person decided: one JSON object a line, only ever added to.

A line that was torn by a power cut stays where it is; the next ruling begins on a line of its own, and reading sets the
torn one aside. Nothing in the file is ever rewritten by Spokeshave.
"""

from __future__ import annotations

import json
import os
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import ClassVar, Generic, TypeVar

from filelock import FileLock, Timeout
from pydantic import TypeAdapter, ValidationError

from capture.files import sync_folder
from extract.rulings.errors import RulingError, RulingLogError
from extract.rulings.model import GivenLine

_PATIENCE = 10.0
"""Seconds to wait for another process that is adding a line."""
_NOT_COMPARED = frozenset({"at", "by"})
"""A ruling that is sent again after a lost answer has a later time."""

Given = TypeVar("Given", bound=GivenLine)


@dataclass(frozen=True, slots=True)
class Aside:
    """A line of the log that is no ruling; it stays in the file."""

    line: int
    """1-based number of the line."""
    text: str
    """What is left of it."""
    why: str
    """What is wrong, a few words."""


@dataclass(frozen=True, slots=True)
class LinesRead(Generic[Given]):
    """What a log holds."""

    rulings: tuple[Given, ...] = ()
    """Every ruling once, in the order in which they were given."""
    aside: tuple[Aside, ...] = ()
    """Lines that could not be read."""


class LineLog(Generic[Given]):
    """A log of lines of one kind; any number of processes may use it at a time."""

    adapter: ClassVar[TypeAdapter[Given]]
    """Reads and checks a line."""
    format: ClassVar[str]
    """What each line says its format is."""
    lock_name: ClassVar[str]
    home: ClassVar[str] = "its folder"
    """What the file lies in."""

    def __init__(self, path: Path) -> None:
        self.path = path

    def read(self) -> LinesRead[Given]:
        """All rulings; none where there is no file yet. Raises `RulingLogError` where the disk refuses."""
        content = self._bytes()
        if content and not content.endswith(b"\n"):
            # Torn, or just now being written by another process: only who has the lock can tell.
            with suppress(Timeout, OSError), self._lock():
                content = self._bytes()
        return self._parse(content)

    def append(self, ruling: Given) -> Given:
        """Add a ruling, and return it when it is safe on disk.

        A ruling whose id stands in the log already is not added again, and the one that stands there is returned.
        Raises `RulingError` where that one says something else, `RulingLogError` where the disk refuses or another
        process keeps the log for ten seconds.
        """
        if not self.path.parent.is_dir():  # the lock would make it
            raise RulingLogError(self.path, f"{self.home} is gone", "put it back, then give the ruling again")
        try:
            with self._lock():
                return self._append(ruling)
        except Timeout:
            raise RulingLogError(
                self.path, "another spokeshave is writing to it", "wait for it to end, then give the ruling again"
            ) from None
        except OSError as error:
            raise RulingLogError(
                self.path,
                f"can't be written ({error.strerror})",
                "make room or mend its permissions, then give it again",
            ) from error

    def _lock(self) -> FileLock:
        return FileLock(self.path.with_name(self.lock_name), timeout=_PATIENCE)

    def _append(self, ruling: Given) -> Given:
        content = self._bytes()
        known = next((one for one in self._parse(content).rulings if one.id == ruling.id), None)
        if known is not None:
            return _same(known, ruling)
        torn = bool(content) and not content.endswith(b"\n")
        line = ruling.model_dump_json(exclude_none=True).encode() + b"\n"
        new = not self.path.exists()
        descriptor = os.open(self.path, os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o666)
        try:
            _write_all(descriptor, b"\n" + line if torn else line)
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
        if new:
            sync_folder(self.path.parent)
        return ruling

    def _bytes(self) -> bytes:
        try:
            return self.path.read_bytes()
        except FileNotFoundError:
            return b""
        except OSError as error:
            raise RulingLogError(self.path, f"can't be read ({error.strerror})", "mend its permissions") from error

    def _parse(self, content: bytes) -> LinesRead[Given]:
        rulings: dict[str, Given] = {}
        aside: list[Aside] = []
        for number, line in enumerate(content.split(b"\n"), start=1):
            if not line.strip():
                continue
            try:
                ruling = self.adapter.validate_json(line)
            except ValidationError as error:
                aside.append(Aside(number, line.decode(errors="replace"), _why(line, error, self.format)))
            else:
                rulings.setdefault(ruling.id, ruling)
        return LinesRead(tuple(rulings.values()), tuple(aside))


def _write_all(descriptor: int, data: bytes) -> None:
    while data:
        data = data[os.write(descriptor, data) :]


def _same(known: Given, ruling: Given) -> Given:
    if known.model_dump(exclude=set(_NOT_COMPARED)) != ruling.model_dump(exclude=set(_NOT_COMPARED)):
        raise RulingError(f"another ruling has the id {ruling.id} already", "give this one an id of its own")
    return known


def _why(line: bytes, error: ValidationError, format_: str) -> str:
    try:
        found = json.loads(line)
    except ValueError:
        return "torn or damaged"
    if isinstance(found, dict) and found.get("format") not in (None, format_):
        return f"of another version: {found['format']}"
    one = error.errors()[0]
    return f"no ruling: {'.'.join(str(part) for part in one['loc'])}: {one['msg']}"
