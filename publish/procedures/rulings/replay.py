"""What a person's rulings come to: groups of steps that are one procedure, with name and pinned version.

The machine adds to these groups and never joins, parts or renames them.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import partial

from publish.procedures.rulings.model import Merge, OnProcedure, Pin, Rename, Split, StepNamed, Unpin, Version
from publish.rulings import groups as grouping

Key = tuple[str, str]
"""Session and id of a step."""


@dataclass(slots=True)
class Group(grouping.Group[Key, StepNamed]):
    """Steps that a person said are one procedure."""

    pinned: Version | None = None


def replay(rulings: Iterable[OnProcedure]) -> tuple[Group, ...]:
    """The groups after these rulings, which are in force, in the order in which they were made."""
    groups: list[Group] = []
    for one in rulings:
        if isinstance(one, Merge):
            _merge(groups, one)
        elif isinstance(one, Split):
            _split(groups, one)
        else:
            _mark(grouping.hold(groups, steps_in(one.of), partial(Group, one.id)), one)
    return tuple(groups)


def steps_in(versions: Iterable[Version]) -> dict[Key, StepNamed]:
    """The steps of versions, in order."""
    return {(version.session, step.id): step for version in versions for step in version.steps}


def _mark(group: Group, one: Rename | Pin | Unpin) -> None:
    if isinstance(one, Rename):
        group.name = one.name
    else:
        group.pinned = one.version if isinstance(one, Pin) else None


def _merge(groups: list[Group], one: Merge) -> None:
    steps = steps_in(version for of in one.of for version in of)
    into, others = grouping.join(groups, steps, partial(Group, one.id))
    # The first procedure that was named gives name and pin; a later one's hold only where that has none.
    for other in others:
        into.name = into.name or other.name
        into.pinned = into.pinned or other.pinned


def _split(groups: list[Group], one: Split) -> None:
    apart = Group(f"{one.id}-apart", steps_in(one.apart), one.name)
    for other in groups:
        if other.pinned is not None and not steps_in((other.pinned,)).keys().isdisjoint(apart.members):
            apart.pinned, other.pinned = other.pinned, None
    grouping.part(groups, steps_in(one.stay), apart, partial(Group, one.id))
