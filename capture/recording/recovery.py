"""Finds the recordings of a shop that were cut off."""

from __future__ import annotations

from dataclasses import dataclass

from capture.errors import SpokeshaveError
from capture.recording.journal import read_journal
from capture.shop import Session, Shop
from capture.timecode import clock


@dataclass(frozen=True, slots=True)
class CutOff:
    """A recording that nobody ended."""

    session: Session
    title: str
    seconds: float
    """How far it reaches, by the recorder's clock."""
    size: int
    """Bytes of it on the disk."""
    port: int
    """Port of the server that took it; 0 where there was none."""

    @property
    def line(self) -> str:
        """One line for the person."""
        if not self.size:
            return f"“{self.title}” was cut off before anything was recorded."
        return f"“{self.title}” was cut off at {clock(self.seconds)}; what was recorded up to there is kept."


def cut_off(shop: Shop) -> tuple[CutOff, ...]:
    """The recordings that were cut off, oldest first; one that is being recorded now is not among them.

    A session that can't be read is left for the proof page to tell of.
    """
    found = []
    for session in shop.sessions():
        try:
            journal = read_journal(session.folder)
            if journal is None or journal.ended:
                continue
            with session.writing():
                file = session.folder / journal.header.file
                size = file.stat().st_size if file.is_file() else 0
                found.append(CutOff(session, session.settings.title, journal.second, size, journal.header.port))
        except SpokeshaveError:
            # Among them: another process holds the session, so it is being recorded or written up now.
            continue
    return tuple(found)
