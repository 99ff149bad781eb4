"""The list of sessions, with what is open in each."""

from __future__ import annotations

from dataclasses import dataclass

from capture.errors import SpokeshaveError
from capture.shop import Session, Shop
from publish.dates import in_words
from publish.gather import read_record


@dataclass(frozen=True, slots=True)
class AtWork:
    """One session as the list shows it."""

    slug: str
    title: str
    date: str
    date_text: str
    subject: str
    open: tuple[str, ...]
    """What is open in it, in words: `2 to settle`; empty where nothing is."""
    problem: str
    """Why it can't be opened; empty where it can."""


def sessions_at_work(shop: Shop) -> tuple[AtWork, ...]:
    """All sessions, newest first."""
    return tuple(_at_work(session) for session in reversed(shop.sessions()))


def _at_work(session: Session) -> AtWork:
    try:
        settings = session.settings
        record = read_record(session.record_file)
    except SpokeshaveError as error:
        return AtWork(session.slug, session.slug, "", "", "", (), str(error))
    stops = sum(one.severity == "stop" for one in record.findings)
    counts = ((stops, "to settle"), (len(record.findings) - stops, "to look at"), (len(record.doubts), "to look up"))
    date = settings.date.isoformat()
    words = tuple(f"{number} {what}" for number, what in counts if number)
    return AtWork(session.slug, settings.title, date, in_words(date), settings.subject, words, "")
