"""The index of a shop: one row a thing that can be found, in SQLite.

A session is read again when its record, rulings, transcript or settings have changed, or what later sessions take back
of it, or what the shop calls its tools and materials; procedures over all sessions are those of the last publish. The
file can be thrown away; where it can't be written, the index is made in memory.
"""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from contextlib import closing, contextmanager
from pathlib import Path

from capture.errors import SpokeshaveError
from capture.shop import Session, Shop
from publish.find.items import items_of
from publish.find.published import searched_procedures
from publish.gather import gather_session
from publish.kit.rulings.model import Said
from publish.standing import Standing

FILE = ".find.sqlite3"
_VERSION = 4
TOKENIZER = "porter unicode61 remove_diacritics 2"
"""Words by their stems (Porter), without case and accents."""
_SCHEMA = f"""
CREATE TABLE session (
    slug TEXT PRIMARY KEY, stamp TEXT NOT NULL, bearing TEXT NOT NULL, title TEXT NOT NULL, date TEXT NOT NULL,
    kit TEXT NOT NULL, called TEXT NOT NULL
);
CREATE TABLE item (
    id INTEGER PRIMARY KEY, slug TEXT NOT NULL, sort TEXT NOT NULL, start REAL, anchor TEXT NOT NULL,
    told TEXT NOT NULL, kind TEXT, low REAL, high REAL
);
CREATE INDEX item_of ON item (slug);
CREATE INDEX item_figure ON item (kind, low, high);
CREATE VIRTUAL TABLE words USING fts5 (told, around, tokenize = '{TOKENIZER}');
"""


class Index:
    """The index of one shop, brought up to date when it is opened."""

    def __init__(self, connection: sqlite3.Connection, problems: tuple[str, ...]) -> None:
        self.connection = connection
        self.problems = problems
        """One line for each session that can't be read."""

    @classmethod
    @contextmanager
    def of(cls, shop: Shop) -> Iterator[Index]:
        """The index of a shop, open for a search."""
        with closing(_opened(shop.root / FILE)) as connection:
            yield cls(connection, _bring_up(connection, shop))


def _opened(path: Path) -> sqlite3.Connection:
    for place in (path, ":memory:"):
        try:
            connection = sqlite3.connect(place)
            if connection.execute("PRAGMA user_version").fetchone()[0] != _VERSION:
                _begin(connection)
            connection.execute("SELECT count(*) FROM session, words WHERE words.rowid < 1").fetchone()
            return connection
        except sqlite3.DatabaseError:
            # Broken, of another version half made, or in a folder that can't be written: it is only an index.
            connection.close()
            if place == path:
                path.unlink(missing_ok=True)
    raise AssertionError("SQLite refuses an index in memory")


def _begin(connection: sqlite3.Connection) -> None:
    for table in ("session", "item", "words"):
        connection.execute(f"DROP TABLE IF EXISTS {table}")
    connection.executescript(_SCHEMA)
    connection.execute(f"PRAGMA user_version = {_VERSION}")
    connection.commit()


def _bring_up(connection: sqlite3.Connection, shop: Shop) -> tuple[str, ...]:
    rows = connection.execute("SELECT slug, stamp, bearing, kit, called FROM session").fetchall()
    known = {slug: (stamp, bearing) for slug, stamp, bearing, _, _ in rows}
    sessions = {one.slug: one for one in shop.sessions()}
    stamps = {slug: _stamp(one) for slug, one in sessions.items()}
    published = searched_procedures(shop.root)
    stamps |= {slug: one.sum for slug, one in published.items()}
    standing = Standing(shop, once=True)
    renamed = [slug for slug, *_, kit, called in rows if standing.names.bearing(_kit_in(kit)) != called]
    if not renamed and stamps == {slug: stamp for slug, (stamp, _) in known.items()}:
        return ()
    known |= dict.fromkeys(renamed, ("", ""))
    problems = []
    with connection:
        for slug, session in sessions.items():
            state = (stamps[slug], standing.bearing(session))
            if known.pop(slug, None) == state:
                continue
            _forget(connection, slug)
            try:
                _add(connection, session, state, standing)
            except SpokeshaveError as error:
                problems.append(str(error))
        for slug, one in published.items():
            if known.pop(slug, ("", ""))[0] != one.sum:
                _forget(connection, slug)
                connection.execute("INSERT INTO session VALUES (?, ?, '', ?, '', '[]', '')", (slug, one.sum, one.title))
                _put(connection, slug, one.around, one.rows)
        for slug in known:
            _forget(connection, slug)
    return tuple(problems)


def _kit_in(kept: str) -> Iterator[Said]:
    """A session's kit as the session names it."""
    return (Said(sort=sort, name=name) for sort, name in json.loads(kept))


def _stamp(session: Session) -> str:
    """Changes whenever a file does that the index is made from."""
    parts = []
    for path in (session.record_file, session.rulings_file, session.transcript_file, session.folder / "session.toml"):
        try:
            seen = path.stat()
            parts.append(f"{seen.st_mtime_ns}:{seen.st_size}")
        except OSError:
            parts.append("-")
    return " ".join(parts)


def _forget(connection: sqlite3.Connection, slug: str) -> None:
    connection.execute("DELETE FROM words WHERE rowid IN (SELECT id FROM item WHERE slug = ?)", (slug,))
    connection.execute("DELETE FROM item WHERE slug = ?", (slug,))
    connection.execute("DELETE FROM session WHERE slug = ?", (slug,))


def _add(connection: sqlite3.Connection, session: Session, state: tuple[str, str], standing: Standing) -> None:
    gathered = gather_session(session, standing)
    source = gathered.source
    facts = source.record.session
    around = " ".join(part for part in (facts.title, facts.subject, facts.trade) if part)
    kit = json.dumps([(one.sort, one.name) for one in gathered.said])
    told = (session.slug, *state, facts.title, facts.date or "", kit, standing.names.bearing(gathered.said))
    connection.execute("INSERT INTO session VALUES (?, ?, ?, ?, ?, ?, ?)", told)
    rows = (
        (one.sort, one.start, one.anchor, one.told, one.words, one.span and one.span.kind,
         one.span and one.span.low, one.span and one.span.high)
        for one in items_of(source)
    )  # fmt: skip
    _put(connection, session.slug, around, rows)


def _put(connection: sqlite3.Connection, slug: str, around: str, rows: Iterable[Sequence[object]]) -> None:
    """Rows of sort, second, anchor, how it is told, what it is found by where that differs, and figure."""
    for sort, start, anchor, told, words, *figure in rows:
        row = connection.execute(
            "INSERT INTO item (slug, sort, start, anchor, told, kind, low, high) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
            (slug, sort, start, anchor, told, *figure),
        )
        connection.execute(
            "INSERT INTO words (rowid, told, around) VALUES (?, ?, ?)", (row.lastrowid, words or told, around)
        )
