"""Signs weighed: fitted weights read from a data file, and their sum.

A logistic regression: the chance is 1 / (1 + e^-x), x being the bias and the weights of the signs together
(D. R. Cox, The regression analysis of binary sequences, J. R. Stat. Soc. B 20, 1958).
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from math import exp
from typing import Any, TypeVar

_T = TypeVar("_T")


@dataclass(frozen=True, slots=True)
class Weights:
    """A bias and the weight of each sign; a sign without one weighs nothing."""

    bias: float
    signs: Mapping[str, float]

    def sum(self, strengths: Mapping[str, float]) -> float:
        """The bias and what the signs weigh, each by its strength; above 0 more speaks for than against."""
        return self.bias + sum(self.signs.get(sign, 0.0) * strengths[sign] for sign in sorted(strengths))

    def chance(self, strengths: Mapping[str, float]) -> float:
        """The same between 0 and 1."""
        return 1 / (1 + exp(-self.sum(strengths)))


def heaviest(proposals: Sequence[_T], signs: Sequence[Sequence[str]], weights: Mapping[str, float]) -> _T:
    """Of several proposals, each with its signs, the one with the largest sum of weights; of equals the first.

    The choice of a conditional logistic regression (D. McFadden, Conditional logit analysis of qualitative choice
    behavior, 1974).
    """
    sums = [sum(weights.get(sign, 0.0) for sign in of_one) for of_one in signs]
    return proposals[sums.index(max(sums))]


@cache
def weight_file(name: str) -> dict[str, Any]:
    """The content of data/<name>_weights.toml, read once. The file's head says how it was fitted."""
    return tomllib.loads(files("extract").joinpath(f"data/{name}_weights.toml").read_text(encoding="utf-8"))
