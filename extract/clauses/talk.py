"""The phrases of data/talk.toml."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from extract.clauses.phrases import Phrases


@dataclass(frozen=True, slots=True)
class Talk:
    """Phrases that are no work, by what they tell; the reasons stand in the data file."""

    history: Phrases
    returns: Phrases
    before: Phrases
    later: Phrases
    fillers: Phrases
    days_past: Phrases
    exclamations: frozenset[str]
    telling: frozenset[str]
    person: dict[str, str]
    present: dict[str, str]


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
        fillers=Phrases(data["fillers"]["phrases"]),
        days_past=Phrases(data["days_past"]["phrases"]),
        exclamations=frozenset(data["exclamations"]["words"]),
        telling=frozenset(data["telling"]["words"]),
        person=pairs("person"),
        present=pairs("present"),
    )
