"""The phrases of data/talk.toml."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from extract.clauses.phrases import Phrases


@dataclass(frozen=True, slots=True)
class Mishap:
    """What tells that the speaker's own work went wrong."""

    phrases: Phrases
    """Said with the work: "by accident"."""
    sequel: Phrases
    """Said right behind it: "and it bit me"."""
    too: frozenset[str]
    """Behind "too": "i drilled it too deep"."""
    verbs: frozenset[str]
    """Past forms that tell a mishap by themselves: "i scorched the felt"."""
    breaking: frozenset[str]
    """The same where nothing says to what end: "i cracked the plate", not "i cracked the seam open"."""
    parted: frozenset[str]
    """Things that are broken on purpose: "i broke the edges"."""


@dataclass(frozen=True, slots=True)
class Talk:
    """Phrases that are no work, by what they tell; the reasons stand in the data file."""

    history: Phrases
    returns: Phrases
    before: Phrases
    later: Phrases
    mishap: Mishap
    fillers: Phrases
    days_past: Phrases
    exclamations: frozenset[str]
    telling: frozenset[str]
    person: dict[str, str]
    present: dict[str, str]


def _mishap(said: dict[str, list[str]]) -> Mishap:
    return Mishap(
        phrases=Phrases(said["phrases"]),
        sequel=Phrases(said["sequel"]),
        too=frozenset(said["too"]),
        verbs=frozenset(said["verbs"]),
        breaking=frozenset(said["breaking"]),
        parted=frozenset(said["parted"]),
    )


@cache
def talk() -> Talk:
    """The lists, read once."""
    data = tomllib.loads(files("extract").joinpath("data/talk.toml").read_text(encoding="utf-8"))

    def pairs(name: str) -> dict[str, str]:
        return {said: meant for said, meant in data[name].items() if said != "reason"}

    return Talk(
        history=Phrases(data["history"]["phrases"]),
        returns=Phrases(data["return"]["phrases"]),
        before=Phrases(data["before"]["phrases"]),
        later=Phrases(data["later"]["phrases"]),
        mishap=_mishap(data["mishap"]),
        fillers=Phrases(data["fillers"]["phrases"]),
        days_past=Phrases(data["days_past"]["phrases"]),
        exclamations=frozenset(data["exclamations"]["words"]),
        telling=frozenset(data["telling"]["words"]),
        person=pairs("person"),
        present=pairs("present"),
    )
