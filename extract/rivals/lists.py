"""The words and weights of data/rivals.toml, read once."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files


@dataclass(frozen=True, slots=True)
class Lists:
    """What makes and weighs rival readings."""

    needs_number: frozenset[str]
    times: frozenset[str]
    tails: frozenset[str]
    taking_back: frozenset[str]
    parts: dict[str, str]
    """Names of parts of an inch by the digits of their denominator."""
    flaws: dict[str, float]
    """What each flaw counts, and under "nats" what one weighs beside the sound."""


@cache
def lists() -> Lists:
    """The lists that come with the package."""
    data = tomllib.loads(files("extract").joinpath("data/rivals.toml").read_text("utf-8"))
    return Lists(
        frozenset(data["needs_number"]),
        frozenset(data["times"]),
        frozenset(data["tails"]),
        frozenset(data["taking_back"]),
        dict(data["parts"]),
        dict(data["flaws"]),
    )
