"""Weighs named reasons with the weights of data/takeback_weights.toml."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from extract.weights import Weights, weight_file

Reasons = dict[str, float]


def weigh(model: str, reasons: Mapping[str, float]) -> float:
    """The sum of the weights of a model's reasons and its bias; above 0 they speak for a correction."""
    return _weights(model).sum(reasons)


@cache
def _weights(model: str) -> Weights:
    signs = dict(weight_file("takeback")[model])
    return Weights(signs.pop("bias"), signs)
