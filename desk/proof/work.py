"""A session at work: what the machine made, its words, a person's rulings; read again only where a file has changed."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, field
from pathlib import Path
from threading import Lock

from capture.shop import Session, Shop
from capture.transcript import Transcript
from extract.record import Record
from extract.retractions import Traced
from extract.rulings import Aside, Proofed, Ruling, RulingLog, apply
from publish.kit import Names
from publish.records import machine_record
from publish.standing import Standing


@dataclass(frozen=True, slots=True)
class Work:
    """One session as it stands on disk."""

    session: Session
    tag: str
    """Changes whenever one of its files does."""
    transcript: Transcript | None
    rulings: tuple[Ruling, ...]
    aside: tuple[Aside, ...]
    proofed: Proofed
    untouched: Proofed
    """The same without any ruling: what the machine wanted a person to look at."""
    retractions: tuple[Traced, ...] = ()
    """What it takes back of earlier sessions."""
    names: Names = field(default_factory=Names)
    """What a person calls tools and materials in the whole shop."""


_MOST_OPEN = 4
"""Sessions kept in memory, the last ones used; a list of a hundred long ones is walked through one by one."""


class Bench:
    """The sessions of a shop that lie open. Safe to ask from several threads."""

    def __init__(self, shop: Shop) -> None:
        self.shop = shop
        self._lock = Lock()
        self._open: dict[str, Work] = {}
        self.standing = Standing(shop)
        """What stands in the shop's sessions."""
        self._read: dict[str, tuple[str, Record, Transcript | None, Proofed]] = {}

    def session(self, slug: str) -> Session | None:
        """The session of exactly that name: no part of a name, and no path, leads anywhere."""
        return next((one for one in self.shop.sessions() if one.slug == slug), None)

    def tag(self, session: Session) -> str:
        """Tells one state of a session's files from another."""
        own = _stamp(*_machine_files(session), session.rulings_file, self.shop.kit_file)
        bearing = self.standing.bearing(session)
        return f'"{own}{f"-{hashlib.sha256(bearing.encode()).hexdigest()[:16]}" if bearing else ""}"'

    def work(self, session: Session) -> Work:
        """The session as it stands. Raises `ShopError` and `RulingLogError` where its files can't be read."""
        with self._lock:
            tag = self.tag(session)
            known = self._open.pop(session.slug, None)
            if known is not None and known.tag == tag:
                self._open[session.slug] = known
                return known
            _, transcript, untouched = self._made(session)
            log = RulingLog(session.rulings_file).read()
            stands = self.standing.of(session)
            made = Work(
                session, tag, transcript, log.rulings, log.aside, stands.proofed, untouched, stands.retractions,
                self.standing.names,
            )  # fmt: skip
            self._open[session.slug] = made
            for slug in list(self._open)[:-_MOST_OPEN]:
                del self._open[slug], self._read[slug]
            return made

    def _made(self, session: Session) -> tuple[Record, Transcript | None, Proofed]:
        """What the machine made of a session; kept while rulings are added, since it is the larger part by far."""
        stamp = _stamp(*_machine_files(session))
        known = self._read.get(session.slug)
        if known is None or known[0] != stamp:
            record = machine_record(session)
            known = (stamp, record, session.transcript(), apply(record, ()))
            self._read[session.slug] = known
        return known[1:]


def _machine_files(session: Session) -> tuple[Path, ...]:
    return session.record_file, session.transcript_file, session.folder / "session.toml"


def _stamp(*paths: Path) -> str:
    return "-".join(_change(path) for path in paths)


def _change(path: Path) -> str:
    try:
        facts = path.stat()
    except FileNotFoundError:
        return "0"
    return f"{facts.st_mtime_ns:x}.{facts.st_size:x}.{facts.st_ino:x}"
