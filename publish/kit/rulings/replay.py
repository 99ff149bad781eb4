"""What a person's rulings come to: names as said that are one thing, and what that is called."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial

from publish.kit.rulings.model import Merge, OnKit, Rename, Said, Sort
from publish.rulings import groups as grouping
from publish.rulings.naming import same_letters

Key = tuple[Sort, str]
"""What a session takes it for, and the name as it is compared."""

Group = grouping.Group[Key, Said]
"""What is one thing; the first of its names as said makes it a tool or a material."""


def replay(rulings: Iterable[OnKit]) -> tuple[Group, ...]:
    """The groups after these rulings, which are in force, in the order in which they were made."""
    groups: list[Group] = []
    for one in rulings:
        new = partial(Group, one.id)
        if isinstance(one, Rename):
            grouping.hold(groups, keyed(one.of), new).name = one.name
        elif isinstance(one, Merge):
            said = keyed(said for of in one.of for said in of)
            into, _ = grouping.join(groups, said, new)
            # The first thing that was named comes first, which says whether all of it is a tool or a material.
            into.members, into.name = said | into.members, one.name
        else:
            apart = Group(f"{one.id}-apart", keyed(one.apart), one.name)
            grouping.part(groups, keyed(one.stay), apart, new).name = one.kept
    return tuple(groups)


def keyed(said: Iterable[Said]) -> dict[Key, Said]:
    """Names as said by what they are compared by, in order."""
    found: dict[Key, Said] = {}
    for one in said:
        found.setdefault(key_of(one), one)
    return found


def key_of(said: Said) -> Key:
    """What a name as said is compared by."""
    return said.sort, same_letters(said.name)
