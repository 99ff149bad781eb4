"""A figure worked out: what it is, how it was got, and where the rule comes from."""

from __future__ import annotations

from dataclasses import dataclass

from capture.errors import SpokeshaveError


class WorkingError(SpokeshaveError):
    """Figures from which nothing can be worked out."""

    def __init__(self, what: str, remedy: str) -> None:
        self.what = what
        self.remedy = remedy
        super().__init__(f"{what}; {remedy}")


@dataclass(frozen=True, slots=True)
class Answer:
    """One figure of a working."""

    name: str
    value: float
    unit: str
    """A name of the unit list, or empty for a bare number."""
    exact: bool = False
    """True where a table or a definition gives the value, so that no digit is made up by the arithmetic."""


@dataclass(frozen=True, slots=True)
class Worked:
    """A working: its answers, the rule with its numbers put in, the source, and what to know before trusting it."""

    title: str
    answers: tuple[Answer, ...]
    working: str
    source: str
    notes: tuple[str, ...] = ()
