"""Groups that a person made, replayed from a log: what is held together, joined and set apart again.

The machine adds to such groups and never joins, parts or renames them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Generic, TypeVar

Key = TypeVar("Key")
Member = TypeVar("Member")


@dataclass(slots=True)
class Group(Generic[Key, Member]):
    """What a person said is one."""

    id: str
    """Of the ruling that made it first."""
    members: dict[Key, Member] = field(default_factory=dict)
    name: str = ""


Grouped = TypeVar("Grouped", bound=Group[Any, Any])


def hold(groups: list[Grouped], members: Mapping[Any, Any], new: Callable[[], Grouped]) -> Grouped:
    """The group of these: the one that has the first of them, and such members as no other has."""
    group = next((of for key in members for of in groups if key in of.members), None)
    if group is None:
        group = new()
        groups.append(group)
    taken = {key for of in groups for key in of.members}
    group.members |= {key: member for key, member in members.items() if key not in taken}
    return group


def join(
    groups: list[Grouped], members: Mapping[Any, Any], new: Callable[[], Grouped]
) -> tuple[Grouped, list[Grouped]]:
    """One group of all that have one of these, and the others that went into it, in the order of the members."""
    met = [group for group in groups if not members.keys().isdisjoint(group.members)]
    order = {key: at for at, key in enumerate(members)}
    met.sort(key=lambda group: min(order[key] for key in group.members if key in order))
    into = met[0] if met else new()
    if not met:
        groups.append(into)
    for other in met[1:]:
        into.members |= other.members
        groups.remove(other)
    into.members |= members
    return into, met[1:]


def part(groups: list[Grouped], stay: Mapping[Any, Any], apart: Grouped, new: Callable[[], Grouped]) -> Grouped:
    """Set a group apart, out of whatever had its members; gives the group of what stays."""
    group = hold(groups, stay, new)
    for other in groups:
        other.members = {key: member for key, member in other.members.items() if key not in apart.members}
    groups.append(apart)
    groups[:] = [of for of in groups if of.members or of is group]
    return group
