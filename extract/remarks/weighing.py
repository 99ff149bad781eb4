"""How likely it is that a breath gives a caution, a doubt or something left for later."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from extract.remarks.breaths import Breath
from extract.remarks.reading import Reading
from extract.remarks.signs import said_signs, signs_of
from extract.weights import Weights, weight_file

KINDS = ("cautions", "doubts", "follow_ups")
"""The kinds of remark that are weighed."""

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


@cache
def remark_weights(kind: str) -> Weights:
    """The weights that `python -m tests.benchmarks.fit_remarks` fitted for a kind."""
    data = weight_file("remark")[kind]
    return Weights(data["bias"], data["signs"])
