"""One session of a shop, as retractions look at it."""

from __future__ import annotations

from dataclasses import dataclass

from extract.record import Record
from extract.rulings.model import Ruling


@dataclass(frozen=True, slots=True)
class Sitting:
    """What the machine made of a session, and what a person ruled on it."""

    slug: str
    """Name of its folder in the shop."""
    record: Record
    """The machine's, under the facts that hold now."""
    rulings: tuple[Ruling, ...] = ()

    @property
    def day(self) -> tuple[str, str]:
        """By which sessions are in order: ISO 8601 date, then folder; sessions without a date come first."""
        return self.record.session.date or "", self.slug

    @property
    def subject(self) -> str:
        """What is on the bench, as it is compared; empty where none is named."""
        return " ".join((self.record.session.subject or "").casefold().split())
