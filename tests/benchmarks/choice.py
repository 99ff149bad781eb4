"""The fit of weights by which one of several proposals is chosen: conditional logistic regression."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from scipy.optimize import minimize
from scipy.sparse import csr_matrix

from extract.weights import heaviest
from tests.benchmarks.marked_talks import MarkedTalk

FOLDS = 5
FEWEST = 3
"""Choices that must show a sign for it to be fitted."""
LEAST = 0.05
"""Smaller weights are left out."""


@dataclass(frozen=True)
class Choice:
    """The signs of each proposal, which of them a reader would accept, and how much the choice counts."""

    signs: Sequence[Sequence[str]]
    right: Sequence[bool]
    times: int = 1


def right_in_folds(
    talks: Sequence[MarkedTalk], choices: Sequence[tuple[MarkedTalk, Choice]], penalty: float
) -> Counter[str]:
    """How many choices of each source come out right, weighed by what the talks of the other folds teach."""
    right: Counter[str] = Counter()
    for fold in range(FOLDS):
        held = {id(talk) for talk in talks[fold::FOLDS]}
        weights = fit([choice for talk, choice in choices if id(talk) not in held], penalty)
        for talk, choice in choices:
            if id(talk) in held:
                right[talk.source] += heaviest(choice.right, choice.signs, weights)
    return right


def fit(choices: Sequence[Choice], penalty: float) -> dict[str, float]:
    """Weights under which the accepted proposals of each choice have the largest share.

    Half of `penalty` times the sum of the squares is added to the loss. Choices without an accepted proposal, or
    without another, teach nothing.
    """
    usable = [one for one in choices if any(one.right) and not all(one.right) for _ in range(one.times)]
    shown = Counter(sign for one in usable for sign in {sign for signs in one.signs for sign in signs})
    column = {sign: place for place, sign in enumerate(sign for sign, count in shown.items() if count >= FEWEST)}
    rows = [
        (signs, right, place)
        for place, one in enumerate(usable)
        for signs, right in zip(one.signs, one.right, strict=True)
    ]
    cells = [(row, column[sign]) for row, (signs, _, _) in enumerate(rows) for sign in signs if sign in column]
    matrix = csr_matrix((np.ones(len(cells)), tuple(zip(*cells, strict=True))), shape=(len(rows), len(column)))
    group = np.array([place for _, _, place in rows])
    accepted = np.array([right for _, right, _ in rows], dtype=float)
    starts = np.flatnonzero(np.r_[True, group[1:] != group[:-1]])

    def loss(weights: Any) -> tuple[float, Any]:
        sums = matrix @ weights
        raised = np.exp(sums - np.maximum.reduceat(sums, starts)[group])
        all_of, good_of = np.add.reduceat(raised, starts), np.add.reduceat(raised * accepted, starts)
        slope = matrix.T @ (raised * accepted / good_of[group] - raised / all_of[group])
        value = np.sum(np.log(all_of) - np.log(good_of)) + penalty / 2 * weights @ weights
        return float(value), penalty * weights - slope

    best = minimize(loss, np.zeros(len(column)), jac=True, method="L-BFGS-B", options={"maxiter": 200}).x
    return {sign: round(float(best[place]), 2) for sign, place in column.items() if abs(best[place]) >= LEAST}
