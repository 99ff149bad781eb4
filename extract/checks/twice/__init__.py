"""One thing told twice with two values, minutes apart and in other words, with no correction between.

Takes "the hanger's four mil out" and long after "that hanger, mind, were six mil out when I put the gauge on"; refuses
"it was 42, it's 36 now", a figure said before as it is said now, and the old part beside the new one. Evidence is
weighed (signs.py). Source: consistency within one narration.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from extract.checks.finding import Suspicion
from extract.checks.talk import Said, Talk
from extract.checks.twice.signs import Scene, Signs
from extract.checks.twice.values import agree, is_statement, may_be_one
from extract.checks.twice.wording import message_for
from extract.weights import Weights, weight_file

__all__ = ["Pair", "find_told_twice", "likeliest", "pairs_of"]

SOURCE = "the narration itself: one thing, two figures"
_LOOK_BACK = 80
"""Figures that are looked back on, the latest ones: an hour costs no more a figure than a minute."""
_APART, _APART_RECALLED = 2, 1
"""Cues between the two: what follows at once is a list, or another reading, unless it is told how it came."""
_LIST = 3
"""So many earlier figures that share as much with a later one are a list, of which it is one more."""
_ALIKE = 0.6
"""How much of what the likeliest one shares is as much."""
_PLAINLY_FOUND = frozenset({"came", "points", "recaps", "says_found"})
_RECALLED = frozenset({"came", "clause_behind", "recalls", "recaps", "says_found"})


@dataclass(frozen=True, slots=True)
class Pair:
    """A later figure and an earlier one that it may tell again."""

    first: Said
    second: Said
    signs: Signs


def find_told_twice(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that the signs say was told before, as another one."""
    weights = _weights()
    scene = Scene(talk)
    for pairs in pairs_of(scene):
        found = likeliest(weights, pairs)
        if found is not None and found[0] > 0:
            first, second = found[1].first, found[1].second
            message = message_for(scene, first, second)
            yield Suspicion("conflict", "stop", (first.measure, second.measure), message, SOURCE)


def likeliest(weights: Weights, pairs: Sequence[Pair]) -> tuple[float, Pair] | None:
    """The pair that the signs speak for most, and how much; None where its two figures agree, or where it is a list."""
    sums = [(weights.sum(pair.signs), -at) for at, pair in enumerate(pairs)]
    if not sums:
        return None
    most, place = max(sums)
    best = pairs[-place]
    silent = agree(best.first, best.second) or _goes_on(best, pairs) or _has_nothing_in_common(best)
    return None if silent else (most, best)


def _has_nothing_in_common(best: Pair) -> bool:
    """Of two things by name, and no telling word beside the one is said beside the other."""
    return "other_item" in best.signs and not best.signs["near"] and not best.signs.keys() & _PLAINLY_FOUND


def _goes_on(best: Pair, pairs: Sequence[Pair]) -> bool:
    """One more figure of a list, of which nothing says that it is recalled."""
    if best.signs.keys() & _RECALLED:
        return False
    much = _ALIKE * best.signs["near"]
    alike = [pair for pair in pairs if pair.signs["near"] >= much and not agree(pair.first, best.first)]
    return 1 + len(alike) >= _LIST


def pairs_of(scene: Scene) -> Iterator[list[Pair]]:
    """For each figure those before it that it may tell again, the latest first."""
    said = [one for one in scene.talk.said if is_statement(one)]
    for at, second in enumerate(said):
        apart = _APART_RECALLED if scene.frames.says_found(second) else _APART
        earlier = [
            one
            for one in said[max(0, at - _LOOK_BACK) : at]
            if second.measure.cue - one.measure.cue >= apart and may_be_one(one, second)
        ]
        yield [
            Pair(first, second, scene.signs(first, second, len(earlier)))
            for first in reversed(earlier)
            if not scene.are_two(first, second)
        ]


def _weights() -> Weights:
    signs = dict(weight_file("conflict")["twice"])
    return Weights(signs.pop("bias"), signs)
