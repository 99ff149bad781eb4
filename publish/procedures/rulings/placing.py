"""Finds the steps of a person's groups among the sessions as they are now.

By id, else by their words within the session, else not at all: what has no place is told, and stays in the log.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

from publish.procedures.outline import Course, Done
from publish.procedures.rulings.model import StepNamed
from publish.procedures.rulings.replay import Group, Key

_LIKE = 0.8
"""Least likeness of words, by Ratcliff and Obershelp's ratio (difflib), where a new hearing gave a step another id."""


@dataclass(frozen=True, slots=True)
class Lost:
    """A step of a person's group that has no place any more."""

    group: int
    """Place among the groups."""
    session: str
    step: StepNamed
    why: str
    """A few words."""


@dataclass(frozen=True, slots=True)
class Placed:
    """Where the groups are now."""

    held: dict[Key, int]
    """Session and id of a step as it is now -> place of its group."""
    now: dict[Key, Key]
    """Session and id as the ruling has them -> as they are now."""
    lost: tuple[Lost, ...]


def place(groups: Sequence[Group], works: Sequence[Course]) -> Placed:
    """Every step of the groups, found or told."""
    steps = {work.slug: {step.id: step for step in work.steps} for work in works}
    wanted = [(at, key, step) for at, group in enumerate(groups) for key, step in group.members.items()]
    held: dict[Key, int] = {}
    now: dict[Key, Key] = {}
    for at, key, _ in wanted:
        if key[1] in steps.get(key[0], {}):
            held[key], now[key] = at, key
    lost = []
    for at, key, step in wanted:
        if key in now:
            continue
        again = _again(step, key[0], steps.get(key[0], {}), held)
        if again is None:
            why = "the step is gone" if key[0] in steps else "the session is gone"
            lost.append(Lost(at, key[0], step, why))
        else:
            held[again], now[key] = at, again
    _fill(works, held)
    return Placed(held, now, tuple(lost))


def _again(wanted: StepNamed, session: str, steps: Mapping[str, Done], held: Mapping[Key, int]) -> Key | None:
    """The step that says most nearly the same, the first of equals."""
    free = [step for step in steps.values() if (session, step.id) not in held]
    likeness = [(SequenceMatcher(None, _folded(wanted.words), _folded(step.text)).ratio(), step) for step in free]
    found = max(likeness, key=lambda one: one[0], default=None)
    return (session, found[1].id) if found is not None and found[0] >= _LIKE else None


def _fill(works: Sequence[Course], held: dict[Key, int]) -> None:
    """A new step between two steps of one group is of that group."""
    for work in works:
        keys = [(work.slug, step.id) for step in work.steps]
        last: int | None = None
        for at, key in enumerate(keys):
            if key not in held:
                continue
            if last is not None and held[keys[last]] == held[key]:
                held.update(dict.fromkeys(keys[last + 1 : at], held[key]))
            last = at


def _folded(text: str) -> str:
    return " ".join(text.casefold().split())
