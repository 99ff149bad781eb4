"""The rows of data/magnitudes*.toml: how large things are, whatever the trade."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any

from extract.record import COMMON
from extract.units import unit_named

Phrase = tuple[str, ...]

_FILES = (
    "magnitudes",
    *(f"magnitudes_{area}" for area in ("terms", "shop", "house", "craft", "sound", "heat", "bench")),
    *(f"usual_{area}" for area in ("strings", "time", "cycle", "wood", "wires")),
)
"""The first one has, beside rows, how the dimensions are said."""
ANY, SIZE = "any", "size"
"""Whatever is measured of the thing; and any of its lengths, of which only the upper end counts."""


@dataclass(frozen=True, slots=True)
class Magnitude:
    """Where one dimension of a thing lies, in `unit`."""

    thing: str
    what: str
    low: float
    high: float
    unit: str
    kind: str
    source: str
    context: frozenset[Phrase]
    """Words, or several together, of which one must be said in the talk; empty where any bench has the thing."""
    usual: bool = False
    """Where it usually lies, not where it may: beyond it only a slip is a fault."""

    def is_of(self, talk: frozenset[str]) -> bool:
        """Whether a talk, by all of its words, may speak of the thing."""
        return not self.context or any(talk.issuperset(phrase) for phrase in self.context)

    @property
    def name(self) -> str:
        """As a message calls it: "the thickness of the board"."""
        if self.what == ANY:
            return f"the {self.thing}"
        return f"the {self.what} of the {self.thing}"

    @property
    def is_plural(self) -> bool:
        """More than one is named: "the tappets"."""
        return self.what == ANY and self.thing.endswith("s") and not self.thing.endswith("ss")


@dataclass(frozen=True, slots=True)
class Dimension:
    """How a dimension is said."""

    after: frozenset[Phrase]
    before: frozenset[Phrase]
    recorded: frozenset[str]


@dataclass(frozen=True, slots=True)
class Magnitudes:
    """All rows by the things they are of."""

    dimensions: dict[str, Dimension]
    by_thing: dict[Phrase, tuple[Magnitude, ...]]
    adjectives: frozenset[str]
    """Words that may stand between a figure and the thing that it is of."""
    longest: int
    """Words of the longest name of a thing."""


@cache
def magnitudes() -> Magnitudes:
    """Read once, at the first check. Raises `UnitError` for a unit that isn't in data/units.toml."""
    folder = files("extract") / "data"
    tables = [tomllib.loads((folder / f"{name}.toml").read_text(encoding="utf-8")) for name in _FILES]
    by_thing: dict[Phrase, list[Magnitude]] = {}
    for rows in (rows for table in tables for rows in table["set"]):
        for row in _rows(rows):
            by_thing.setdefault(tuple(row.thing.split()), []).append(row)
    return Magnitudes(
        dimensions={
            name: Dimension(_phrases(row["after"]), _phrases(row["before"]), frozenset(row["recorded"]))
            for name, row in tables[0]["said"].items()
        },
        adjectives=frozenset(tables[0]["adjectives"]["words"]),
        by_thing={thing: tuple(rows) for thing, rows in by_thing.items()},
        longest=max(len(thing) for thing in by_thing),
    )


def _rows(data: dict[str, Any]) -> Iterator[Magnitude]:
    source, context = data.get("source", COMMON), _phrases(data.get("context", []))
    usual = data.get("usual", False)
    for things, what, low, high, unit in data["rows"]:
        for thing in things.split(", "):
            yield Magnitude(thing, what, low, high, unit, unit_named(unit).kind, source, context, usual)


def _phrases(rows: list[str]) -> frozenset[Phrase]:
    return frozenset(tuple(row.split()) for row in rows)
