"""A session's steps as procedures are known by them: what is done, without figures, titles and seconds.

It changes less often than the rest of a session, and is quick to read: a thousand of them are looked through at once.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Protocol

from publish.procedures.deeds import Deed
from publish.procedures.things import Things

Runs = tuple[tuple[int, int], ...]
"""Where jobs begin and end (behind the last), by place among the steps of a session; they cover all steps."""


class Done(Protocol):
    """A step, by what is done in it."""

    @property
    def id(self) -> str:
        """Its id."""

    @property
    def number(self) -> int:
        """From 1."""

    @property
    def text(self) -> str:
        """Its instruction."""

    @property
    def deeds(self) -> tuple[Deed, ...]:
        """What is done in it."""


class Course(Protocol):
    """A session, by what is done in it."""

    @property
    def slug(self) -> str:
        """Its folder."""

    @property
    def steps(self) -> Sequence[Done]:
        """In order of work."""

    @property
    def runs(self) -> Runs:
        """Its jobs, as its steps alone tell them apart."""


@dataclass(frozen=True, slots=True)
class OutlineStep:
    """A step of an outline."""

    id: str
    text: str
    number: int
    deeds: tuple[Deed, ...]


@dataclass(frozen=True, slots=True)
class Outline:
    """A session of which nothing else is known."""

    slug: str
    steps: tuple[OutlineStep, ...]
    runs: Runs


def plain(course: Course) -> dict[str, Any]:
    """The steps and jobs of a session as plain values, to keep."""
    steps = [[step.id, step.text, step.number, [_plain(deed) for deed in step.deeds]] for step in course.steps]
    return {"steps": steps, "runs": course.runs}


def outline_in(slug: str, kept: dict[str, Any]) -> Outline:
    """The outline of a session that was kept."""
    steps = (
        OutlineStep(name, text, number, tuple(_deed(*deed) for deed in deeds))
        for name, text, number, deeds in kept["steps"]
    )
    return Outline(slug, tuple(steps), tuple((begin, end) for begin, end in kept["runs"]))


def _plain(deed: Deed) -> list[Any]:
    of = deed.things
    return [deed.act, deed.text, of.parts, of.materials, of.tools, of.words, deed.borrows]


def _deed(
    act: str, text: str, parts: list[str], materials: list[str], tools: list[str], words: list[str], borrows: bool
) -> Deed:
    return Deed(act, text, Things(tuple(parts), tuple(materials), tuple(tools), tuple(words)), borrows)
