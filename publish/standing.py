"""What stands in a shop on disk: the one place from which every room takes which figures hold.

    standing = Standing(shop)
    standing.of(session).proofed.record     # as the session's own rulings and the later sessions have it

Sessions are read again when one of their files has changed. A session that can't be read is passed over, until it is
asked for itself.
"""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path
from threading import Lock

from capture.errors import SpokeshaveError
from capture.shop import Session, Shop
from extract.retractions import Sitting, Stands, what_stands
from extract.rulings import Proofed, RulingLog, apply
from publish.kit.names import Names
from publish.kit.of_shop import names_of_shop
from publish.records import machine_record

_SIGN = b'"earlier_session"'
"""In the file of every record that takes something back of an earlier session."""


class Standing:
    """What stands in the sessions of one shop. Safe to ask from several threads."""

    def __init__(self, shop: Shop, *, once: bool = False) -> None:
        """With `once`, files are only looked at the first time: for a task that goes over all sessions in one go."""
        self._shop = shop
        self._once = once
        self._lock = Lock()
        self._read: dict[str, tuple[str, Sitting, Proofed]] = {}
        self._stands: dict[str, Stands] = {}
        self._stamps: dict[str, str] = {}
        self._takes_back: dict[str, tuple[str, bool]] = {}
        self._named: tuple[str, Names] | None = None

    @classmethod
    def around(cls, session: Session) -> Standing:
        """That of the shop in which a session's folder lies."""
        return cls(Shop(session.folder.parent.parent))

    def of(self, session: Session) -> Stands:
        """A session as it stands. Raises `ShopError` and `RulingLogError` where its files can't be read."""
        with self._lock:
            self._bring_up()
            found = self._stands.get(session.slug)
            if found is None:
                _, proofed = self._sitting(session, _stamp(session))
                found = self._stands[session.slug] = Stands(proofed)
            return found

    @property
    def names(self) -> Names:
        """What a person calls tools and materials in the whole shop, read again when the log has changed.

        Raises `RulingLogError` where it can't be read.
        """
        with self._lock:
            stamp = _change(self._shop.kit_file)
            if self._named is None or self._named[0] != stamp:
                self._named = (stamp, names_of_shop(self._shop))
            return self._named[1]

    def bearing(self, session: Session) -> str:
        """Tells one state from another of what other sessions have to do with this one; empty where nothing has."""
        with self._lock:
            self._bring_up()
            found = self._stands.get(session.slug)
            return found.bearing if found else ""

    def _bring_up(self) -> None:
        """Work out what stands where a file has changed; sessions are only read for it where one takes back another's
        words."""
        if self._once and self._stamps:
            return
        sessions = self._shop.sessions()
        stamps = {one.slug: _stamp(one) for one in sessions}
        if stamps == self._stamps:
            return
        self._takes_back = {one.slug: self._retracts(one, stamps[one.slug]) for one in sessions}
        self._stamps, self._stands = stamps, {}
        if not any(takes_back for _, takes_back in self._takes_back.values()):
            return
        read = []
        for session in sessions:
            with suppress(SpokeshaveError):
                read.append(self._sitting(session, stamps[session.slug]))
        self._stands = what_stands([sitting for sitting, _ in read], {one.slug: proofed for one, proofed in read})

    def _retracts(self, session: Session, stamp: str) -> tuple[str, bool]:
        known = self._takes_back.get(session.slug)
        if known is not None and known[0] == stamp:
            return known
        try:
            return stamp, _SIGN in session.record_file.read_bytes()
        except OSError:
            return stamp, False

    def _sitting(self, session: Session, stamp: str) -> tuple[Sitting, Proofed]:
        """A session with its own rulings alone; read again where a file has changed."""
        known = self._read.get(session.slug)
        if known is None or known[0] != stamp:
            record = machine_record(session)
            rulings = RulingLog(session.rulings_file).read().rulings
            known = (stamp, Sitting(session.slug, record, rulings), apply(record, rulings))
            self._read[session.slug] = known
        return known[1:]


def _stamp(session: Session) -> str:
    files = (session.record_file, session.rulings_file, session.folder / "session.toml")
    return "-".join(_change(path) for path in files)


def _change(path: Path) -> str:
    try:
        facts = path.stat()
    except OSError:
        return "0"
    return f"{facts.st_mtime_ns:x}.{facts.st_size:x}.{facts.st_ino:x}"
