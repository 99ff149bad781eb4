"""What tools and materials are called in a shop: by a person's rulings, else as each session has them.

    names = Names.by(log.read().rulings)
    names.of(Said(sort="tool", name="filler gauge"))     # Called("tool", "feeler gauge"), where a person merged the two

A name that no ruling has goes with what a person brought together where it only differs by case or plural, or is what
that is called; otherwise nobody has said anything of it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from publish.kit.rulings.log import in_force
from publish.kit.rulings.model import Ruling, Said, Sort
from publish.kit.rulings.replay import Group, Key, key_of, replay
from publish.kit.same import same_thing


@dataclass(frozen=True, slots=True)
class Called:
    """What a thing is, and is called."""

    sort: Sort
    name: str


class Names:
    """The names that a person gave in one shop."""

    def __init__(self, groups: Iterable[Group] = ()) -> None:
        self.groups = tuple(groups)
        self._by_name: dict[Key, Called] = {}
        self._by_root: dict[Key, Called] = {}
        called = [(group, Called(_sort(group), group.name)) for group in self.groups]
        given = [(group, of, Said(sort=of.sort, name=of.name)) for group, of in called]
        # What was said goes before what things are called, the very words before words like them.
        for group, of in called:
            self._by_name |= dict.fromkeys(group.members, of)
        for _, of, name in given:
            self._by_name.setdefault(key_of(name), of)
        for group, of in called:
            for said in group.members.values():
                self._by_root.setdefault(_root(said), of)
        for _, of, name in given:
            self._by_root.setdefault(_root(name), of)

    @classmethod
    def by(cls, rulings: Iterable[Ruling]) -> Names:
        """The names by a log's rulings."""
        return cls(replay(in_force(rulings)))

    def of(self, said: Said) -> Called | None:
        """What a person calls a thing for which a session has this name; None where nobody said."""
        if not self.groups:
            return None
        return self._by_name.get(key_of(said)) or self._by_root.get(_root(said))

    def bearing(self, said: Iterable[Said]) -> str:
        """Tells one state from another of what these names are called; empty where nobody said anything of them."""
        told = ((one, self.of(one)) for one in said)
        return "\n".join(f"{one.sort} {one.name}\0{of.sort} {of.name}" for one, of in told if of is not None)

    def without_effect(self, said: Iterable[Said]) -> tuple[str, ...]:
        """A line for each name as said, in a person's rulings, that no session has any more; `said` is all there is."""
        if not self.groups:
            return ()
        there = {key for one in said for key in (key_of(one), _root(one))}
        return tuple(
            f"a ruling on “{group.name}” has no place any more for the {one.sort} “{one.name}” (no session names it); "
            "it stays in kit.json"
            for group in self.groups
            for one in group.members.values()
            if key_of(one) not in there and _root(one) not in there
        )


def _sort(group: Group) -> Sort:
    return next(iter(group.members))[0]


def _root(said: Said) -> Key:
    return said.sort, same_thing(said.name)
