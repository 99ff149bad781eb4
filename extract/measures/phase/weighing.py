"""The phase whose signs weigh most.

The weights stand in data/phase_weights.toml with how they were fitted; adding them up is all that is done here.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from extract.measures.figure import Figure, Finding
from extract.measures.phase.signs import Signs, signs_of
from extract.record import Phase
from extract.weights import weight_file

PHASES: tuple[Phase, ...] = ("as_found", "target", "as_left", "general")
"""The order of the weights in a row of the file."""

Weights = Mapping[str, tuple[float, ...]]


def by_weight(figure: Figure, finding: Finding) -> Phase:
    """The phase for which most speaks; always answers."""
    return heaviest(signs_of(figure, finding), phase_weights())


def heaviest(signs: Signs, weights: Weights) -> Phase:
    """The phase with the largest sum of what its signs weigh; a sign that no row names weighs nothing."""
    sums = list(weights[""])
    for sign, strength in signs.items():
        for place, weight in enumerate(weights.get(sign, ())):
            sums[place] += strength * weight
    return PHASES[max(range(len(PHASES)), key=sums.__getitem__)]


@cache
def phase_weights() -> Weights:
    """Sign -> its weight for each phase, read once."""
    return {sign: tuple(row) for sign, row in weight_file("phase").items()}
