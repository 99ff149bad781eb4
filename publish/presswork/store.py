"""What was made for the last edition: what each session gives to pages over all sessions, and which files stand.

An SQLite file in the shop. It only saves work: a broken one, or one of another program or other settings, is thrown
away. What is read from it is held against its sum.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from zlib import crc32

import orjson

from publish.find.published import STORE
from publish.presswork.sums import sum_of

FILE = STORE
_VERSION = 3
_SCHEMA = """
CREATE TABLE edition (sum TEXT NOT NULL);
CREATE TABLE session (slug TEXT PRIMARY KEY, head BLOB NOT NULL, check_sum INTEGER NOT NULL);
CREATE TABLE part (
    slug TEXT NOT NULL, name TEXT NOT NULL, sum TEXT NOT NULL, data BLOB NOT NULL, PRIMARY KEY (slug, name)
);
CREATE INDEX part_name ON part (name, slug);
CREATE TABLE memo (
    kind TEXT NOT NULL, slug TEXT NOT NULL, sum TEXT NOT NULL, data BLOB NOT NULL, check_sum INTEGER NOT NULL,
    PRIMARY KEY (kind, slug)
);
CREATE TABLE printed (
    name TEXT PRIMARY KEY, sum TEXT NOT NULL, files BLOB NOT NULL, more BLOB NOT NULL, check_sum INTEGER NOT NULL
);
"""


class StoreBrokenError(Exception):
    """The store can't be read, or holds something other than was put into it."""


@dataclass(frozen=True, slots=True)
class Kept:
    """What is always at hand of a session."""

    stamp: str
    """Of its files; empty where they were changed too lately to be known by one."""
    own: str
    """The sum over its files."""
    sum: str
    """Over all that it is made from."""
    brief: Any
    sums: Mapping[str, str]
    """Of each part; what is kept of each thing that it measures is not among them."""


@dataclass(frozen=True, slots=True)
class Printed:
    """Files that were printed together."""

    sum: str
    """Over what they were made from."""
    files: Mapping[str, tuple[int, int, str]]
    """By name: size, time of change in nanoseconds, and the sum over its bytes."""
    more: Any
    """What else is to be known of them."""


class Store:
    """The store of one shop, open for one publish; nothing is kept before `commit`."""

    def __init__(self, connection: sqlite3.Connection) -> None:
        self._connection = connection

    def begin(self, edition: str) -> None:
        """Make ready for an edition; what was kept for another one is forgotten."""
        known = [one for (one,) in self._all("SELECT sum FROM edition")]
        if known != [edition]:
            for table in ("edition", "session", "part", "memo", "printed"):
                self._do(f"DELETE FROM {table}")  # noqa: S608 (fixed names)
            self._do("INSERT INTO edition VALUES (?)", edition)

    def sessions(self) -> dict[str, Kept]:
        """What is kept of each session, by slug."""
        rows = self._all("SELECT slug, head, check_sum FROM session")
        return {slug: Kept(**_checked(head, check, slug)) for slug, head, check in rows}

    def parts(self, name: str, slugs: Sequence[str] | None = None) -> dict[str, Any]:
        """That part of each session, or of these alone, by slug."""
        asked = "SELECT slug, sum, data FROM part WHERE name = ?"
        if slugs is None:
            rows = self._all(asked, name)
        else:
            rows = [row for slug in slugs for row in self._all(f"{asked} AND slug = ?", name, slug)]
            if len(rows) != len(slugs):
                raise StoreBrokenError
        return {slug: _part(data, total) for slug, total, data in rows}

    def put_session(self, slug: str, kept: Kept, parts: Mapping[str, bytes] | None = None) -> None:
        """Keep a session in the place of what was known of it; its parts stay where none are given."""
        if parts is not None:
            self.put_parts(slug, parts)
        head = orjson.dumps(kept)
        self._do("INSERT OR REPLACE INTO session VALUES (?, ?, ?)", slug, head, _check(head, slug))

    def put_parts(self, slug: str, parts: Mapping[str, bytes]) -> None:
        """Keep these parts in the place of all that was known by this name."""
        self.forget(slug)
        rows = [(slug, name, sum_of(data), data) for name, data in parts.items()]
        self._many("INSERT INTO part VALUES (?, ?, ?, ?)", rows)

    def keep_parts(self, beginning: str, names: Container[str]) -> None:
        """Forget the parts of all whose name begins so, but for these."""
        known = self._all(
            "SELECT DISTINCT slug FROM part WHERE slug >= ? AND slug < ?", beginning, f"{beginning}\uffff"
        )
        for (slug,) in known:
            if slug not in names:
                self.forget(slug)

    def forget(self, slug: str) -> None:
        """Forget a session."""
        self._do("DELETE FROM session WHERE slug = ?", slug)
        self._do("DELETE FROM part WHERE slug = ?", slug)

    def memos(self, kind: str) -> dict[str, tuple[str, Any]]:
        """What was worked out of this kind, by slug, each with the sum over what it was worked out from."""
        rows = self._all("SELECT slug, sum, data, check_sum FROM memo WHERE kind = ?", kind)
        return {slug: (total, _checked(data, check, kind, slug, total)) for slug, total, data, check in rows}

    def memo(self, kind: str, slug: str) -> tuple[str, Any]:
        """One of them; an empty sum and null where there is none."""
        rows = self._all("SELECT sum, data, check_sum FROM memo WHERE kind = ? AND slug = ?", kind, slug)
        return next(((total, _checked(data, check, kind, slug, total)) for total, data, check in rows), ("", None))

    def put_memos(self, kind: str, memos: Mapping[str, tuple[str, bytes]], gone: Iterable[str] = ()) -> None:
        """Keep what was worked out this time, and forget what is asked for no more."""
        self._many("DELETE FROM memo WHERE kind = ? AND slug = ?", [(kind, slug) for slug in gone])
        rows = [(kind, slug, total, data, _check(data, kind, slug, total)) for slug, (total, data) in memos.items()]
        self._many("INSERT OR REPLACE INTO memo VALUES (?, ?, ?, ?, ?)", rows)

    def printed(self) -> dict[str, Printed]:
        """What was printed, by name."""
        rows = self._all("SELECT name, sum, files, more, check_sum FROM printed")
        return {
            name: Printed(total, _checked(files, check, name, total, more), orjson.loads(more))
            for name, total, files, more, check in rows
        }

    def put_printed(self, printed: Mapping[str, Printed], gone: Iterable[str]) -> None:
        """Keep what was printed this time, and forget what is not there any more."""
        self._many("DELETE FROM printed WHERE name = ?", [(name,) for name in gone])
        rows = []
        for name, one in printed.items():
            files, more = orjson.dumps(one.files), orjson.dumps(one.more)
            rows.append((name, one.sum, files, more, _check(files, name, one.sum, more)))
        self._many("INSERT OR REPLACE INTO printed VALUES (?, ?, ?, ?, ?)", rows)

    def commit(self) -> None:
        """Keep everything."""
        with _broken():
            self._connection.commit()

    def _do(self, statement: str, *values: object) -> None:
        with _broken():
            self._connection.execute(statement, values)

    def _many(self, statement: str, rows: Iterable[tuple[object, ...]]) -> None:
        with _broken():
            self._connection.executemany(statement, rows)

    def _all(self, question: str, *values: object) -> list[tuple[Any, ...]]:
        with _broken():
            return self._connection.execute(question, values).fetchall()


@contextmanager
def _broken() -> Iterator[None]:
    """What SQLite says of a broken file; its names may be no text any more, which is a `ValueError`."""
    try:
        yield
    except (sqlite3.Error, ValueError) as error:
        raise StoreBrokenError from error


def _part(data: bytes, total: str) -> Any:
    if not isinstance(data, bytes) or sum_of(data) != total:
        raise StoreBrokenError
    return orjson.loads(data)


def _checked(data: bytes, check: int, *with_it: str | bytes) -> Any:
    if not isinstance(data, bytes) or _check(data, *with_it) != check:
        raise StoreBrokenError
    return orjson.loads(data)


def _check(data: bytes, *with_it: str | bytes) -> int:
    """A sum that tells a disk's mistake; what a page is made from has `sum_of`."""
    check = crc32(data)
    for one in with_it:
        check = crc32(one.encode("utf-8", "surrogatepass") if isinstance(one, str) else one, check)
    return check


@contextmanager
def opened(path: Path) -> Iterator[Store]:
    """The store in a file, an empty one where there is none; in memory where the file can't be written.

    Raises `StoreBrokenError` where the file is no such store: throw it away.
    """
    try:
        connection = sqlite3.connect(path)
    except sqlite3.OperationalError:
        connection = sqlite3.connect(":memory:")
    with closing(connection):
        with _broken():
            if connection.execute("PRAGMA user_version").fetchone()[0] != _VERSION:
                for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'").fetchall():
                    connection.execute(f"DROP TABLE IF EXISTS {name}")
                connection.executescript(_SCHEMA)
                connection.execute(f"PRAGMA user_version = {_VERSION}")
            connection.execute("PRAGMA synchronous = NORMAL")
        yield Store(connection)
