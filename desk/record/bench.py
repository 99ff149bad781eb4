"""The recordings under way in this run of the server, each held against every other process."""

from __future__ import annotations

from contextlib import ExitStack
from dataclasses import dataclass
from datetime import date
from threading import Lock
from time import monotonic

from capture.errors import ShopError
from capture.recording import CutOff, Finished, Kind, Room, Take, came_to_nothing, cut_off, finish, room_for
from capture.recording.room import Free, free_bytes
from capture.shop import Session, SessionSettings, Shop

_SILENT = 5.0
"""Seconds after the last piece from which a recording that nobody ended may have lost its page."""

_MEASURED = 10.0
"""Seconds of a recording after which its own rate is known well enough."""


@dataclass(slots=True)
class _Held:
    """A recording under way."""

    session: Session
    take: Take
    lease: ExitStack
    """Keeps other processes from the session."""
    heard: float
    """When the last piece came, by the monotonic clock."""


class Bench:
    """Begins recordings, takes their pieces, ends them. Safe to use from several threads."""

    def __init__(self, shop: Shop, port: int, free: Free = free_bytes) -> None:
        self.shop = shop
        self._port = port
        self._free = free
        self._held: dict[str, _Held] = {}
        self._lock = Lock()

    def begin(self, settings: SessionSettings, kind: Kind) -> Session:
        """Make a session's folder and open its recording. Raises `ShopError` where the disk is full or refuses."""
        if self.room(kind).state == "none":
            raise ShopError(self.shop.root, "the disk has no room for a recording", "make room on it, then begin again")
        named = settings.model_copy(update={"recording": f"recording{kind.ending}"})
        session = self.shop.add_session(named)
        with ExitStack() as lease, self._lock:
            lease.enter_context(session.writing())
            take = Take.begin(session.folder, kind, self._port)
            self._held[session.slug] = _Held(session, take, lease.pop_all(), monotonic())
        return session

    def session(self, slug: str) -> Session:
        """The session whose folder has exactly this name. Raises `ShopError` where there is none."""
        found = next((one for one in self.shop.sessions() if one.slug == slug), None)
        if found is None:
            raise ShopError(self.shop.root, f"there is no session {slug!r}", "begin a new one")
        return found

    def add(self, slug: str, number: int, content: bytes, second: float) -> int:
        """Take a piece; gives the number that is wanted next. A recording that was cut off goes on with it.

        Raises `ShopError` where there is no such session, its recording was ended, or the disk refuses.
        """
        held = self._taking(slug)
        held.heard = monotonic()
        return held.take.add(number, content, second)

    def end(self, slug: str, second: float) -> Finished | None:
        """End a recording and make it whole; null where nothing came of it, whose session is then taken away.

        Ending it twice gives the same. Raises `ShopError` where the disk refuses.
        """
        session = self.session(slug)
        with self._lock:
            held = self._held.pop(slug, None)
        with ExitStack() as lease:
            if held is None:
                lease.enter_context(session.writing())
            else:
                lease.push(held.lease)
                lease.callback(held.take.close)
                held.take.end(second)
            finished = finish(session.folder, self._free)
            nothing = came_to_nothing(session.folder)
        if nothing:
            self.shop.remove(session)
        elif finished is None and session.recording_file is not None:
            return Finished(session.recording_file, second)
        return finished

    def room(self, kind: Kind) -> Room:
        """Room for a recording that has not begun."""
        return room_for(self.shop.root, kind.rate, self._free)

    def room_left(self, slug: str) -> Room:
        """Room for the rest of a recording, by what it took so far."""
        take = self._taking(slug).take
        rate = take.size / take.second if take.second >= _MEASURED else take.size / max(take.second, 1.0)
        return room_for(take.folder, rate, self._free)

    def unended(self) -> tuple[CutOff, ...]:
        """The recordings that nobody ended, those of this run among them whose page is silent."""
        with self._lock:
            silent = [one for one in self._held.values() if monotonic() - one.heard > _SILENT]
        ours = [
            CutOff(one.session, one.session.settings.title, one.take.second, one.take.size, self._port)
            for one in silent
        ]
        return (*cut_off(self.shop), *ours)

    def is_recording(self, slug: str) -> bool:
        """True while this run takes pieces of it."""
        with self._lock:
            return slug in self._held

    def close(self) -> None:
        """Let go of everything; what was being recorded counts as cut off."""
        with self._lock:
            held, self._held = list(self._held.values()), {}
        for one in held:
            one.take.close()
            one.lease.close()

    def _taking(self, slug: str) -> _Held:
        with self._lock:
            held = self._held.get(slug)
            if held is None:
                session = self.session(slug)
                with ExitStack() as lease:
                    lease.enter_context(session.writing())
                    held = self._held[slug] = _Held(session, Take.resume(session.folder), lease.pop_all(), monotonic())
            return held


def settings_of(title: str, subject: str, trade: str) -> SessionSettings:
    """What the person said of a session, with a title where there was none."""
    named = title.strip() or subject.strip() or "At the bench"
    return SessionSettings(title=named[:1].upper() + named[1:], subject=subject.strip(), date=date.today(), trade=trade)
