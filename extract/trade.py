"""A trade's words and figures, read from extract/trades/*.toml.

A trade file holds what a repairer of that trade takes for granted: what is measured and in which unit, the parts,
tools and materials by name, the hazards with the usual caution. `general` is part of every trade; a shop may add a file
of its own.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import TypeVar

from capture.errors import DataFileError, SpokeshaveError
from extract.trade_facts import Attribute, Band, Hazard, Term, Trade
from extract.trade_file import read_trade_file

__all__ = [
    "Attribute",
    "Band",
    "Hazard",
    "Term",
    "Trade",
    "UnknownTradeError",
    "guess_trade",
    "load_trade",
    "trade_names",
]

_FOLDER = Path(__file__).parent / "trades"
_GENERAL = "general"
_FEWEST_MARKS = 3
"""A lone "valve" or "bridge" is said at many benches. Every different sign is a mark, and so is each time that a
subject of the trade is named: two mentions of a ukulele make the trade, two of a bridge don't."""
_RAREST = 125
"""Words of a talk for each sign of its trade, at most: two hinges and a drawer don't make it one of furniture."""

_Fact = TypeVar("_Fact", Attribute, Term, Hazard)


class UnknownTradeError(SpokeshaveError, KeyError):
    """A trade that has no file."""

    def __init__(self, name: str) -> None:
        self.name = name
        super().__init__(name)

    def __str__(self) -> str:
        return f"no trade is called {self.name!r}; choose one of {', '.join(trade_names())}"


@cache
def trade_names() -> tuple[str, ...]:
    """Names of the trades that are built in, `general` first."""
    return (_GENERAL, *sorted(path.stem for path in _FOLDER.glob("*.toml") if path.stem != _GENERAL))


def load_trade(name: str, extra: Path | None = None) -> Trade:
    """The trade of that name joined with the general one and, last, with a shop's own file.

    A later file adds words to what an earlier one names; its kind, unit and bands win. A caution that is built in stays
    as it is: a file may add hazards, never reword one. Raises `UnknownTradeError` (a `KeyError`) where there is no such
    trade, `DataFileError` where the shop's file is malformed.
    """
    if name not in trade_names():
        raise UnknownTradeError(name)
    trade = _built_in(_GENERAL)
    if name != _GENERAL:
        trade = _join(trade, _built_in(name))
    if extra is None:
        return trade
    own = read_trade_file(extra)
    known = {hazard.name for hazard in trade.hazards}
    for hazard in own.hazards:
        if hazard.name in known:
            problem = "a built-in caution can't be replaced"
            raise DataFileError(extra, f"hazards.{hazard.name}", problem, "give your caution a name of its own")
    return replace(_join(trade, own), name=trade.name)


def guess_trade(text: str) -> str:
    """Name of the trade whose signs occur most often in a text; "general" where too few do, or too seldom."""
    lowered = text.lower()
    words = len(lowered.split())
    best = (0, _GENERAL)
    for name in trade_names()[1:]:
        found = [match.group(1) for match in _sign_pattern(name).finditer(lowered)]
        subjects = {said for term in _built_in(name).subjects for said in term.said}
        marked = len(set(found)) + sum(sign in subjects for sign in found) >= _FEWEST_MARKS
        if marked and len(found) * _RAREST >= words:
            best = max(best, (len(found), name))
    return best[1]


@cache
def _built_in(name: str) -> Trade:
    return read_trade_file(_FOLDER / f"{name}.toml")


@cache
def _sign_pattern(name: str) -> re.Pattern[str]:
    signs = sorted(_built_in(name).signs, key=len, reverse=True)
    # A sign right behind a digit is a unit: "0.9 amps".
    return re.compile(rf"(?<!\w)(?<!\d )({'|'.join(re.escape(sign) for sign in signs)})(?:s|es)?(?!\w)")


def _join(base: Trade, more: Trade) -> Trade:
    return Trade(
        name=more.name,
        signs=_unite(base.signs, more.signs),
        attributes=_join_named(base.attributes, more.attributes, _join_attributes),
        subjects=_join_named(base.subjects, more.subjects, _join_terms),
        parts=_join_named(base.parts, more.parts, _join_terms),
        tools=_join_named(base.tools, more.tools, _join_terms),
        materials=_join_named(base.materials, more.materials, _join_terms),
        hazards=_join_named(base.hazards, more.hazards, lambda _, later: later),
    )


def _join_named(
    base: tuple[_Fact, ...], more: tuple[_Fact, ...], join: Callable[[_Fact, _Fact], _Fact]
) -> tuple[_Fact, ...]:
    """Facts by name; what the later file names comes first."""
    earlier: dict[str, _Fact] = {fact.name: fact for fact in base}
    later = tuple(join(earlier.pop(fact.name), fact) if fact.name in earlier else fact for fact in more)
    return later + tuple(earlier.values())


def _join_attributes(base: Attribute, more: Attribute) -> Attribute:
    replaced = {band.items for band in more.bands}
    return Attribute(
        name=base.name,
        said=_unite(base.said, more.said),
        kind=more.kind,
        unit=more.unit or base.unit,
        bands=(*more.bands, *(band for band in base.bands if band.items not in replaced)),
        things=_unite(base.things, more.things),
        of=more.of or base.of,
        adjectives=_unite(base.adjectives, more.adjectives),
        verbs=_unite(base.verbs, more.verbs),
    )


def _join_terms(base: Term, more: Term) -> Term:
    return Term(base.name, _unite(base.said, more.said))


def _unite(base: Iterable[str], more: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys((*base, *more)))
