"""How likely it is that a breath gives a caution, a doubt or something left for later."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from extract.remarks.breaths import Breath
from extract.remarks.reading import Reading
from extract.remarks.signs import said_signs, sign_words, signs_of
from extract.weights import Weights, weight_file

KINDS = ("cautions", "doubts", "follow_ups")
"""The kinds of remark that are weighed."""

_RULED = 1.5
"""What a plain rule counts for beside its fitted weight: a few lines have no end, where most is left for later."""
_OWN = 0.3
"""What the breath's own words must weigh: its neighbours and its place in the talk make no remark of it."""

Ruled = Mapping[str, frozenset[int]]
"""For each kind the tokens at which the plain rules found one."""


def candidates(reading: Reading, breaths: tuple[Breath, ...], ruled: Ruled) -> list[frozenset[str]]:
    """The signs of every breath, in order; a plain rule that found something there is a sign too."""
    said = [frozenset(said_signs(reading, breath)) for breath in breaths]
    return [signs_of(reading, breaths, said, index) | _by_rule(breath, ruled) for index, breath in enumerate(breaths)]


def _by_rule(breath: Breath, ruled: Ruled) -> frozenset[str]:
    return frozenset(
        f"rule: {kind}" for kind, at in ruled.items() if any(breath.start <= one < breath.end for one in at)
    )


def speaks_for(kind: str, weights: Weights, signs: frozenset[str]) -> float:
    """How much speaks for a remark of a kind: above 0 more than speaks against it. Both limits come from five folds."""
    own = sum(
        max(0.0, weights.signs.get(sign, 0.0)) for sign in signs if sign in sign_words() or sign == f"rule: {kind}"
    )
    return weights.sum(dict.fromkeys(signs, 1.0)) + _RULED * (f"rule: {kind}" in signs) if own >= _OWN else -1.0


@cache
def remark_weights(kind: str) -> Weights:
    """The weights that `python -m tests.benchmarks.fit_remarks` fitted for a kind."""
    data = weight_file("remark")[kind]
    return Weights(data["bias"], data["signs"])
