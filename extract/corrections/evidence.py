"""Weighs named reasons with the weights of data/takeback_weights.toml."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files

Reasons = dict[str, float]


def weigh(model: str, reasons: Mapping[str, float]) -> float:
    """The sum of the weights of a model's reasons and its bias; above 0 they speak for a correction."""
    weights = _weights()[model]
    return weights["bias"] + sum(weights.get(name, 0.0) * value for name, value in reasons.items())


@cache
def _weights() -> dict[str, dict[str, float]]:
    data = tomllib.loads((files("extract") / "data" / "takeback_weights.toml").read_text(encoding="utf-8"))
    return {model: dict(weights) for model, weights in data.items()}
