"""Cuts the steps of a session into runs that make a job each.

Takes "heat the bridge ... clamp the bridge | mark the saddle slot ... fit the saddle" as two. The cut is the cheapest
one under a model in which each run draws its things from a stock of its own (Utiyama and Isahara 2001, "A Statistical
Model for Domain-Independent Text Segmentation", equation 8, found by dynamic programming), with a bonus where a job
ends and another begins by what is done: strung up, polished; taken apart, masked.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import log

from publish.procedures.acts import act_words
from publish.procedures.deeds import Deed
from publish.procedures.likeness import Features, things_features, together
from publish.procedures.outline import Runs

_PRIOR = 0.9
"""Weight of the cost of a run by itself."""
_ARC = 0.5
_LONGEST = 40
"""Steps of a run."""


def cut(steps: Sequence[Sequence[Deed]]) -> Runs:
    """Where runs begin and end."""
    if not steps:
        return ()
    stock = [_stock(step) for step in steps]
    kinds = len({name for one in stock for name in one})
    weight = sum(sum(one.values()) for one in stock)
    best: list[tuple[float, int]] = [(0.0, 0)]
    for end in range(1, len(steps) + 1):
        counts: Features = {}
        options = []
        for begin in range(end - 1, max(-1, end - 1 - _LONGEST), -1):
            for name, one in stock[begin].items():
                counts[name] = counts.get(name, 0.0) + one
            cost = best[begin][0] + _cost(counts, kinds) + _PRIOR * log(weight + 2)
            if begin:
                cost -= _ARC * _turn(steps[begin - 1], steps[begin])
            options.append((cost, begin))
        best.append(min(options))
    return _traced(best)


def _traced(best: Sequence[tuple[float, int]]) -> Runs:
    runs: list[tuple[int, int]] = []
    end = len(best) - 1
    while end > 0:
        runs.append((best[end][1], end))
        end = best[end][1]
    return tuple(reversed(runs))


def _stock(step: Sequence[Deed]) -> Features:
    return together(things_features(deed) for deed in step)


def _cost(counts: Features, kinds: int) -> float:
    whole = sum(counts.values()) + kinds
    return sum(one * log(whole / (one + 1)) for one in counts.values())


def _turn(before: Sequence[Deed], after: Sequence[Deed]) -> float:
    words = act_words()
    return (before[-1].act in words.last) + (after[0].act in words.first)
