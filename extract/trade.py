"""A trade's words and figures, read from extract/trades/*.toml.

A trade file holds what a repairer of that trade takes for granted: what is measured and in which unit, the parts, tools
and materials by name, the hazards with the usual caution. `general` is part of every trade.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Band:
    """Where a figure usually lies, in `unit`; outside it is worth a question, not wrong."""

    low: float
    high: float
    unit: str
    source: str
    items: tuple[str, ...] = ()
    """The band holds for these instruments or parts only; empty for all."""


@dataclass(frozen=True, slots=True)
class Attribute:
    """Something that is measured: "string height"."""

    name: str
    said: tuple[str, ...]
    """Every way of naming it, the name included: words or phrases, lower case, singular."""
    kind: str
    """The kind of unit it takes: "length", "temperature" ..., as in data/units.toml."""
    unit: str | None = None
    """The trade's habit where the unit is left out, as a unit name of data/units.toml."""
    bands: tuple[Band, ...] = ()


@dataclass(frozen=True, slots=True)
class Term:
    """A part, tool or material by its name and other ways of saying it (lower case, singular)."""

    name: str
    said: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Hazard:
    """Words that call for a caution, the caution itself and where it comes from."""

    name: str
    said: tuple[str, ...]
    caution: str
    source: str


@dataclass(frozen=True, slots=True)
class Trade:
    """All that a trade file and the general file hold."""

    name: str
    signs: tuple[str, ...] = ()
    """Words that show that a narration belongs to this trade."""
    attributes: tuple[Attribute, ...] = ()
    parts: tuple[Term, ...] = ()
    tools: tuple[Term, ...] = ()
    materials: tuple[Term, ...] = ()
    hazards: tuple[Hazard, ...] = ()


def trade_names() -> tuple[str, ...]:
    """Names of the trades that are built in."""
    return ("general",)


def load_trade(name: str) -> Trade:
    """The trade of that name joined with the general one; `KeyError` where there is none."""
    return Trade(name)


def guess_trade(text: str) -> str:
    """Name of the trade whose signs occur most often in a text; "general" where none does."""
    return "general"
