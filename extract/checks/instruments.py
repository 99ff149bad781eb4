"""A figure that an instrument can't show: pounds on a thermocouple, volts on a feeler.

Takes "the thermocouple goes in an inch, and it's reading fourteen pounds too low" and "the stopwatch showed 3 mm";
refuses "the thermometer is 3 mm thick" and "the meter reads 12 volts".
Source: what the instrument is made to measure; the rows of data/instruments.toml.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from extract.checks.finding import Suspicion
from extract.checks.talk import Said, Talk
from extract.checks.units import SOURCE
from extract.checks.vocabulary import Phrase

_REACH, _BACK = 9, 16
_IT = frozenset({"it", "it's", "its", "that", "that's", "she", "she's", "this", "which", "they", "and"})
_LONGEST = 3


@dataclass(frozen=True, slots=True)
class _Instruments:
    kinds: dict[Phrase, frozenset[str]]
    reading: frozenset[str]
    """Verbs of which one must stand between the instrument and the figure."""
    aside: frozenset[str]
    """Words after which the figure is another's."""


def find_unreadable(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that is told as read on an instrument made for another kind."""
    for one in talk.said:
        measure = one.measure
        if measure.kind is None or not measure.unit_said or measure.unit == "dimensionless":
            continue
        name = _read_on(talk, one)
        if name is not None and measure.kind not in _data().kinds[name]:
            message = f"{measure.display} is nothing that a {' '.join(name)} shows"
            yield Suspicion("dimension", "stop", (measure,), message, SOURCE)


def _read_on(talk: Talk, one: Said) -> Phrase | None:
    """The instrument whose reading a figure is, where it is one."""
    words = one.clause[-_REACH:]
    at = next((at for at in range(len(words) - 1, -1, -1) if words[at] in _data().reading), None)
    if at is None or _data().aside & {*words[at + 1 :]}:
        return None
    found = _last_named(words[:at])
    if found is not None:
        name, end = found
        return None if _data().aside & {*words[end:at]} else name
    if len(words) == len(one.before) and words[max(0, at - 2) : at + 1] and _IT & {*words[max(0, at - 2) : at]}:
        first = talk.by_place.get(one.place - 1)
        found = _last_named(first.clause[-_BACK:]) if first is not None and one.near else None
        return found[0] if found is not None else None
    return None


def _last_named(words: Phrase) -> tuple[Phrase, int] | None:
    """The instrument that was named last, and where its name ends."""
    for end in range(len(words), 0, -1):
        for length in range(min(_LONGEST, end), 0, -1):
            name = words[end - length : end]
            name = (*name[:-1], name[-1].removesuffix("'s"))
            if name in _data().kinds:
                return name, end
    return None


@cache
def _data() -> _Instruments:
    data = tomllib.loads((files("extract") / "data" / "instruments.toml").read_text(encoding="utf-8"))
    kinds = {tuple(name.split()): frozenset(row["kinds"]) for row in data["instrument"] for name in row["names"]}
    return _Instruments(kinds, frozenset(data["reading"]["verbs"]), frozenset(data["reading"]["aside"]))
