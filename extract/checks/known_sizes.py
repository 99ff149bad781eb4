"""A figure said for a size that goes by number or letter, and that the size does not have.

Takes "a number seven drill, that's 221 thou" (0.201 in) and "20 gauge music wire, that's 32 thou" (0.045 in); "a number
seven drill, about 13/64" passes, and so does a gauge whose system nobody named, as long as some system has that figure.
Source: the tables of the working figures, each with its own.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

from extract.checks.finding import Suspicion
from extract.checks.talk import Said, Talk
from extract.units import UnitError, to_unit
from extract.working import WorkingError
from extract.working.drills import SOURCE, drill_named
from extract.working.screws import NUMBER_SOURCE, screw_diameter
from extract.working.wire import diameters, gauges

_FILE = Path(__file__).parent.parent / "data" / "known_sizes.toml"
_BACK = 9
"""Words before a figure among which the name of its size must stand."""
_LINK = 3
"""Words before a figure among which it must be said to restate the name."""
_NEAR = Fraction(3, 100)
"""How far any figure may lie from the table, as a part of it; our own choice, no source."""
_WIDE = Fraction(12, 100)
"""The same for one rounded to a coarse fraction."""


@dataclass(frozen=True, slots=True)
class _Size:
    name: str
    inches: tuple[Fraction, ...]
    """More than one where the name alone does not tell."""
    source: str
    end: int
    """Behind its last word."""


def find_wrong_sizes(talk: Talk) -> Iterator[Suspicion]:
    """Each length said for a drill, a screw or a gauge of wire that has another."""
    for one in talk.said:
        if one.measure.kind != "length" or one.measure.difference:
            continue
        words = one.before[-_BACK:]
        size = _size_named(words)
        if size is not None and _restates(words[size.end :]) and not _has(one, size):
            yield Suspicion("conversion", "stop", (one.measure,), _message(one, size), size.source)


def _message(one: Said, size: _Size) -> str:
    sizes = " or ".join(f"{float(inches):.4g}\N{NO-BREAK SPACE}in" for inches in size.inches)
    return f"{size.name} is {sizes}, not {one.measure.display}"


def _has(one: Said, size: _Size) -> bool:
    unit = one.measure.unit or ""
    for inches in size.inches:
        try:
            exact = to_unit(inches, "inch", unit)
        except UnitError:
            return True
        if any(
            abs(figure.value - exact) <= max(min(figure.half, exact * _WIDE), exact * _NEAR) for figure in one.figures
        ):
            return True
    return False


def _restates(between: Sequence[str]) -> bool:
    told = " ".join(between[-_LINK:])
    return any(f" {link} " in f" {told} " for link in _data()["restates"]["words"])


def _size_named(words: Sequence[str]) -> _Size | None:
    """The last size named among words."""
    for at in range(len(words) - 1, -1, -1):
        for kind in (_drill, _screw, _gauge):
            if (found := kind(words, at)) is not None:
                return found
    return None


def _drill(words: Sequence[str], at: int) -> _Size | None:
    """ "number seven drill", "letter f drill", "the drill is a letter f"."""
    if at < 1:
        return None
    named = _data()["numbered"]
    near = words[max(0, at - 5) : at + 4]
    if not any(word in _data()["drill"]["nouns"] for word in near):
        return None
    if words[at - 1] in named["letter"] and len(words[at]) == 1:
        name, title = words[at].upper(), f"a letter {words[at].upper()} drill"
    elif words[at - 1] in named["number"] and (number := _number(words, at)) is not None:
        name, title = f"#{number[0]}", f"a number {number[0]} drill"
    else:
        return None
    try:
        return _Size(title, (drill_named(name).inches,), SOURCE, at + 1)
    except WorkingError:
        return None


def _screw(words: Sequence[str], at: int) -> _Size | None:
    """ "number eight screw", "number 8 wood screw"."""
    if at < 1 or words[at - 1] not in _data()["numbered"]["number"] or (number := _number(words, at)) is None:
        return None
    if not any(word in _data()["screw"]["nouns"] for word in words[number[1] : number[1] + 3]):
        return None
    try:
        return _Size(f"a number {number[0]} screw", (screw_diameter(number[0]),), NUMBER_SOURCE, number[1])
    except WorkingError:
        return None


def _gauge(words: Sequence[str], at: int) -> _Size | None:
    """ "twenty gauge", "20 gauge music wire"."""
    if words[at] not in _data()["gauge"]["nouns"] or at < 1:
        return None
    start = at - 2 if at > 1 and _kind(words[at - 2]) == "tens" and _kind(words[at - 1]) == "ones" else at - 1
    number = _number(words, start)
    if number is None or number[1] != at:
        return None
    try:
        sizes = diameters(number[0])
    except WorkingError:
        return None
    beside = (*words[max(0, start - 2) : start], *words[at + 1 : at + 3])
    systems = [name for name, said in _data()["gauge"]["systems"].items() if any(word in said for word in beside)]
    chosen = [name for name in systems if name in sizes] or list(sizes)
    title = f"{number[0]} gauge wire" if len(chosen) > 1 else f"{number[0]} of {gauges()[chosen[0]].title}"
    sources = "; ".join(gauges()[name].source for name in chosen)
    return _Size(title, tuple(Fraction(sizes[name]).limit_denominator(10**5) for name in chosen), sources, at + 1)


def _number(words: Sequence[str], at: int) -> tuple[int, int] | None:
    """The whole number up to 99 whose first word is at `at`, and where it ends."""
    from extract.numbers.vocabulary import vocabulary  # its package brings spaCy, which publishing does without

    word = words[at].lstrip("#")
    if word.isdigit():
        return int(word), at + 1
    kind, value = vocabulary().words.get(word, ("", 0))
    if kind == "tens" and at + 1 < len(words) and _kind(words[at + 1]) == "ones":
        return value + vocabulary().words[words[at + 1]][1], at + 2
    return (value, at + 1) if kind in ("ones", "teens", "tens") else None


def _kind(word: str) -> str:
    from extract.numbers.vocabulary import vocabulary

    return vocabulary().words.get(word, ("", 0))[0]


@cache
def _data() -> dict[str, Any]:
    return tomllib.loads(_FILE.read_text(encoding="utf-8"))
