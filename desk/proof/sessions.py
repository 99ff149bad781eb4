"""The list of sessions, with what is open in each: listed at once, told session by session."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from capture.errors import SpokeshaveError
from capture.shop import Session
from desk.proof.work import Bench
from extract.rulings import Proofed
from publish.dates import in_words


@dataclass(frozen=True, slots=True)
class Listed:
    """One session as the list shows it."""

    slug: str
    title: str
    date: str = ""
    date_text: str = ""
    subject: str = ""
    open: str | None = None
    """What is open in it, in words: `2 to settle, 7 to look at`; null where that takes reading it first."""
    problem: str = ""
    """Why it can't be opened; empty where it can, as far as is known."""


class Listing:
    """What is open in each session of a shop, remembered until one of the session's files changes."""

    def __init__(self, bench: Bench) -> None:
        self._bench = bench
        self._told: dict[str, tuple[str, str]] = {}

    def all(self) -> tuple[Listed, ...]:
        """All sessions, newest first; no record is read for it."""
        return tuple(self._listed(session) for session in reversed(self._bench.shop.sessions()))

    def open_in(self, session: Session) -> str:
        """What is open in one. Raises `SpokeshaveError` where its files can't be read."""
        known = self._known(session)
        if known is None:
            work = self._bench.work(session)
            known = _in_words(work.proofed)
            self._told[session.slug] = (work.tag, known)
        return known

    def _known(self, session: Session) -> str | None:
        tag, words = self._told.get(session.slug, ("", ""))
        return words if tag == self._bench.tag(session) else None

    def _listed(self, session: Session) -> Listed:
        try:
            facts = session.settings
        except SpokeshaveError as error:
            return Listed(session.slug, session.slug, problem=str(error))
        date = facts.date.isoformat()
        return Listed(session.slug, facts.title, date, in_words(date), facts.subject, self._known(session))


def _in_words(proofed: Proofed) -> str:
    counts = Counter("settle" if one.rank == "stop" else "look" for one in proofed.open)
    words = [
        f"{counts[kind]} {what}" for kind, what in (("settle", "to settle"), ("look", "to look at")) if counts[kind]
    ]
    if proofed.unplaced:
        words.append(f"{len(proofed.unplaced)} not placed")
    if proofed.passed:
        words.append("passed for press")
    return ", ".join(words) or "nothing open"
