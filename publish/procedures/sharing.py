"""Which of a session's procedures a figure or a caution belongs to.

A figure that stands in no step goes to the procedure that names its item, else to the one in whose course it was said.
A caution goes to the one in whose course it was said; none is ever left out.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TypeVar

from extract.roots import root
from publish.context import Hazard
from publish.procedures.things import words_of
from publish.procedures.work import SessionWork, Told, WorkStep

Stretch = Sequence[WorkStep]
"""The steps of one procedure in a session."""
_Kind = TypeVar("_Kind", Told, Hazard)


def loose_of(work: SessionWork, stretches: Sequence[Stretch]) -> list[tuple[Told, ...]]:
    """For each stretch its figures that no step has."""
    named = [_names(of) for of in stretches]

    def of(one: Told) -> int:
        words = {root(word) for word in words_of(f"{one.measure.item or ''} {one.measure.attribute or ''}")}
        naming = [at for at, names in enumerate(named) if words & names]
        return _in_whose_course(one.measure.start, stretches, naming)

    return _dealt(work.loose, of, len(stretches))


def cautions_of(work: SessionWork, stretches: Sequence[Stretch]) -> list[tuple[Hazard, ...]]:
    """For each stretch the cautions of its course."""
    return _dealt(work.cautions, lambda one: _in_whose_course(one.moment.seconds, stretches, ()), len(stretches))


def _dealt(items: Sequence[_Kind], of: Callable[[_Kind], int], number: int) -> list[tuple[_Kind, ...]]:
    dealt: list[list[_Kind]] = [[] for _ in range(number)]
    for one in items:
        dealt[of(one)].append(one)
    return [tuple(own) for own in dealt]


def _in_whose_course(seconds: float, stretches: Sequence[Stretch], among: Sequence[int]) -> int:
    """The stretch whose last step before these seconds is the latest; before all, the one that begins first."""
    places = among or range(len(stretches))
    begun = [
        (max(step.start for step in stretches[at] if step.start <= seconds), at)
        for at in places
        if any(step.start <= seconds for step in stretches[at])
    ]
    return max(begun)[1] if begun else min(places, key=lambda at: stretches[at][0].start)


def _names(stretch: Stretch) -> set[str]:
    parts = (part for step in stretch for deed in step.deeds for part in deed.things.parts)
    return {root(word) for part in parts for word in part.split()}
