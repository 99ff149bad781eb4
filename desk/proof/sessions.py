"""The list of sessions, with what is open in each."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from capture.errors import SpokeshaveError
from capture.shop import Session
from desk.proof.work import Bench
from publish.dates import in_words


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


def sessions_at_work(bench: Bench) -> tuple[AtWork, ...]:
    """All sessions, newest first."""
    return tuple(_at_work(bench, session) for session in reversed(bench.shop.sessions()))


def _at_work(bench: Bench, session: Session) -> AtWork:
    try:
        settings = session.settings
        proofed = bench.work(session).proofed
    except SpokeshaveError as error:
        return AtWork(session.slug, session.slug, "", "", "", (), str(error))
    counts = Counter("settle" if one.rank == "stop" else "look" for one in proofed.open)
    words = [
        f"{counts[kind]} {what}" for kind, what in (("settle", "to settle"), ("look", "to look at")) if counts[kind]
    ]
    if proofed.unplaced:
        words.append(f"{len(proofed.unplaced)} not placed")
    if proofed.passed:
        words.append("passed for press")
    date = settings.date.isoformat()
    return AtWork(session.slug, settings.title, date, in_words(date), settings.subject, tuple(words), "")
