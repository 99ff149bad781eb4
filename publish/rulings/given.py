"""What a shop's log holds, as publishing takes it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, TypeVar

from extract.rulings.line_log import LineLog
from extract.rulings.model import GivenLine

Line = TypeVar("Line", bound=GivenLine)


@dataclass(frozen=True, slots=True)
class Given(Generic[Line]):
    """What a shop's log holds."""

    rulings: tuple[Line, ...] = ()
    told: tuple[str, ...] = ()
    """A line for each line of it that is no ruling."""


def given_in(log: LineLog[Line]) -> Given[Line]:
    """What the log holds. Raises `RulingLogError` where it can't be read."""
    read, name = log.read(), log.path.name
    aside = (f"line {one.line} of {name} is {one.why}; it stays there, and does nothing" for one in read.aside)
    return Given(read.rulings, tuple(aside))
