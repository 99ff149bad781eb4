"""What a person's rulings come to: groups of steps that are one procedure, with name and pinned version.

The machine adds to these groups and never joins, parts or renames them.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from publish.procedures.rulings.model import Merge, OnProcedure, Pin, Rename, Split, StepNamed, Unpin, Version

Key = tuple[str, str]
"""Session and id of a step."""


@dataclass(slots=True)
class Group:
    """Steps that a person said are one procedure."""

    id: str
    """Of the ruling that made it first."""
    steps: dict[Key, StepNamed] = field(default_factory=dict)
    name: str = ""
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
            _mark(_held(groups, one.of, one.id), one)
    return tuple(groups)


def steps_in(versions: Iterable[Version]) -> dict[Key, StepNamed]:
    """The steps of versions, in order."""
    return {(version.session, step.id): step for version in versions for step in version.steps}


def _mark(group: Group, one: Rename | Pin | Unpin) -> None:
    if isinstance(one, Rename):
        group.name = one.name
    else:
        group.pinned = one.version if isinstance(one, Pin) else None


def _held(groups: list[Group], versions: Iterable[Version], ruling: str) -> Group:
    """The group of these steps: the one that has the first of them, and such steps as no other has."""
    steps = steps_in(versions)
    group = next((of for key in steps for of in groups if key in of.steps), None)
    if group is None:
        group = Group(ruling)
        groups.append(group)
    taken = {key for of in groups for key in of.steps}
    group.steps |= {key: step for key, step in steps.items() if key not in taken}
    return group


def _merge(groups: list[Group], one: Merge) -> None:
    steps = steps_in(version for of in one.of for version in of)
    met = [group for group in groups if not steps.keys().isdisjoint(group.steps)]
    # The first procedure that was named gives name and pin; a later one's hold only where that has none.
    order = {key: at for at, key in enumerate(steps)}
    met.sort(key=lambda group: min(order[key] for key in group.steps if key in order))
    into = met[0] if met else Group(one.id)
    if not met:
        groups.append(into)
    for other in met[1:]:
        into.steps |= other.steps
        into.name = into.name or other.name
        into.pinned = into.pinned or other.pinned
        groups.remove(other)
    into.steps |= steps


def _split(groups: list[Group], one: Split) -> None:
    group = _held(groups, one.stay, one.id)
    apart = Group(f"{one.id}-apart", steps_in(one.apart), one.name)
    for other in (*groups,):
        other.steps = {key: step for key, step in other.steps.items() if key not in apart.steps}
        if other.pinned is not None and not steps_in((other.pinned,)).keys().isdisjoint(apart.steps):
            apart.pinned, other.pinned = other.pinned, None
    groups.append(apart)
    groups[:] = [of for of in groups if of.steps or of is group]
