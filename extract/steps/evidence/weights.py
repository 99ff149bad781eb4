"""What the signs weigh, read from data/step_weights.toml, which `python -m tests.benchmarks.fit_steps` fits.

It is a logistic regression: the chance of a step is 1 / (1 + e^-x), x being the bias and the weights of its signs
together (D. R. Cox, The regression analysis of binary sequences, J. R. Stat. Soc. B 20, 1958).
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from math import exp


@dataclass(frozen=True, slots=True)
class Weights:
    """A bias and the weight of each sign; a sign without one weighs nothing."""

    bias: float
    signs: Mapping[str, float]

    def chance(self, signs: Iterable[str]) -> float:
        """Between 0 and 1: how often clauses with these signs were marked as steps."""
        return 1 / (1 + exp(-self.bias - sum(self.signs.get(sign, 0.0) for sign in sorted(signs))))


@cache
def step_weights() -> Weights:
    """The fitted weights, read once."""
    data = tomllib.loads(files("extract").joinpath("data/step_weights.toml").read_text(encoding="utf-8"))
    return Weights(data["bias"], data["signs"])
