"""Steps told out of order: "before that i had the strings off" is put before the step just told."""

from __future__ import annotations

from dataclasses import replace

from extract.clauses.bench import Bench
from extract.clauses.talk import talk
from extract.spans import Action

_LOOK_BACK = 4
"""Tokens before a step's first one in which the words may stand."""


def in_order(bench: Bench, actions: tuple[Action, ...]) -> tuple[Action, ...]:
    """The actions as spoken, each with its place in the order of work.

    Places are even numbers; a step that came before its neighbour gets the odd number under the neighbour's.
    """
    placed = []
    for index, action in enumerate(actions):
        place = 2 * index
        if index and _came_before(bench, action):
            place = 2 * index - 3
        placed.append(replace(action, order=place))
    return tuple(placed)


def _came_before(bench: Bench, action: Action) -> bool:
    start = max(0, action.start - _LOOK_BACK)
    return any(
        talk().before.length_at(bench.lower, at) for at in range(start, min(action.start + _LOOK_BACK, action.end))
    )
