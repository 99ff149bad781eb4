"""A procedure over all sessions that did it: its versions, set beside one another."""

from __future__ import annotations

from dataclasses import dataclass

from publish.context import Hazard
from publish.procedures.addressing import Moved
from publish.procedures.deeds import Deed
from publish.procedures.library import MANY
from publish.procedures.work import SessionWork, Told, WorkStep


@dataclass(frozen=True, slots=True)
class VersionDone:
    """The procedure as one session did it."""

    work: SessionWork
    steps: tuple[WorkStep, ...]
    """In order; mostly one behind the other."""
    loose: tuple[Told, ...]
    """Standing figures of the session that belong to it, and to none of its steps."""
    cautions: tuple[Hazard, ...]
    """Said or called for in its course."""

    @property
    def seconds(self) -> float:
        """How long the film takes over it: from the first word of each run of steps to the last."""
        total, begin = 0.0, self.steps[0]
        for before, step in zip(self.steps, (*self.steps[1:], None), strict=True):
            if step is None or step.number != before.number + 1:
                total += max(0.0, before.end - begin.start)
                begin = step or begin
        return total

    @property
    def told(self) -> tuple[Told, ...]:
        """All its standing figures."""
        return (*(one for step in self.steps for one in step.told), *self.loose)


@dataclass(frozen=True, slots=True)
class Doing:
    """A thing done, in one version."""

    version: int
    """Place among the versions."""
    step: WorkStep
    deed: Deed
    told: tuple[Told, ...]
    """Its figures."""
    moved: bool
    """That version did it earlier or later than the rest."""


@dataclass(frozen=True, slots=True)
class Stage:
    """A step of the procedure, over all versions that have it."""

    doings: tuple[Doing, ...]
    """In the order of the versions; a version may have it more than once."""
    typical: Doing
    """The one whose words stand for all."""

    @property
    def versions(self) -> int:
        """How many versions have it."""
        return len({one.version for one in self.doings})


@dataclass(frozen=True, slots=True)
class Procedure:
    """What several sessions, or one, did in the same way."""

    slug: str
    """Name of its page."""
    name: str
    by_hand: bool
    """A person named it."""
    versions: tuple[VersionDone, ...]
    """Oldest first."""
    stages: tuple[Stage, ...]
    """In order of work."""
    pinned: int | None
    """Place of the version that a person prefers."""

    @property
    def sessions(self) -> int:
        """How many sessions did it."""
        return len({one.work.slug for one in self.versions})

    @property
    def many(self) -> bool:
        """Its page tells its versions briefly."""
        return len(self.versions) >= MANY

    @property
    def has_page(self) -> bool:
        """It was done more than once, or a person named or pinned it."""
        return self.sessions > 1 or self.by_hand or self.pinned is not None


@dataclass(frozen=True, slots=True)
class Procedures:
    """All procedures of a shop."""

    all: tuple[Procedure, ...]
    """In the order in which they were first done."""
    lost: tuple[str, ...]
    """A line for each ruling of a person of which a step has no place any more."""
    moved: tuple[Moved, ...] = ()
    """Addresses that were published and from which something moved away."""
