"""A unit of a kind that nothing near it speaks of: volts in a camera without a wire.

Takes "the pressure plate pushes with about 9 volts when it should be 40 grams" and "it moves forward twelve newton
metres"; refuses "twelve volts at the battery" and "the nut goes to twelve newton metres".
Source: the words themselves; which words belong to a kind of unit stands in data/worlds.toml.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from extract.checks.finding import Suspicion
from extract.checks.talk import Said, Talk, words_of
from extract.checks.units import a_kind
from extract.roots import root

SOURCE = "the narration itself: nothing else in it is of that kind"


@dataclass(frozen=True, slots=True)
class _World:
    """What is spoken of where units of some kinds are said."""

    name: str
    talk: frozenset[str]
    near: frozenset[str]


def find_foreign(talk: Talk) -> Iterator[Suspicion]:
    """Each figure in a unit whose kind is said once in the talk, with no word of that kind near it."""
    spoken = frozenset(root(word) for word in talk.words)
    for one in talk.said:
        measure = one.measure
        world = _worlds().get(measure.kind or "")
        if world is None or not measure.unit_said or len(one.figures) > 1 or world.talk & spoken:
            continue
        if _is_among_its_own(talk, one) or world.near & _near(one):
            continue
        message = f"{measure.display} is {a_kind(measure.kind or '')}, but nothing near it speaks of {world.name}"
        yield Suspicion("dimension", "stop", (measure,), message, SOURCE)


def _near(one: Said) -> frozenset[str]:
    named = words_of(f"{one.measure.item or ''} {one.measure.where or ''}")
    return frozenset(root(word) for word in (*one.before, *one.after, *named))


def _is_among_its_own(talk: Talk, one: Said) -> bool:
    """Another figure of its kind is said in the talk, or one of its world right before or behind it."""
    world = _worlds()[one.measure.kind or ""]
    for other in talk.said:
        if other is one or not other.measure.unit_said:
            continue
        beside = abs(other.place - one.place) == 1 and abs(other.measure.cue - one.measure.cue) <= 1
        if other.measure.kind == one.measure.kind or (beside and _worlds().get(other.measure.kind or "") is world):
            return True
    return False


@cache
def _worlds() -> dict[str, _World]:
    """By kind of unit."""
    data = tomllib.loads((files("extract") / "data" / "worlds.toml").read_text(encoding="utf-8"))
    found = {}
    for row in data.values():
        world = _World(row["name"], frozenset(map(root, row["talk"])), frozenset(map(root, row["near"])))
        found.update(dict.fromkeys(row["kinds"], world))
    return found
