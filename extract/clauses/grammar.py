"""The function words of data/clauses.toml."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from extract.clauses.phrases import Phrases


@dataclass(frozen=True, slots=True)
class Grammar:
    """Function words by what they do; the reasons stand in the data file."""

    particles: frozenset[str]
    object_pronouns: frozenset[str]
    subjects: frozenset[str]
    singular_subjects: frozenset[str]
    finite: frozenset[str]
    auxiliaries: frozenset[str]
    subordinators: frozenset[str]
    half_subordinators: frozenset[str]
    joins: frozenset[str]
    openers: frozenset[str]
    governors: frozenset[str]
    asking: frozenset[str]
    reporting: frozenset[str]
    bound: frozenset[str]
    movers: frozenset[str]
    opener_phrases: Phrases
    urgings: Phrases
    pointers: dict[str, frozenset[str]]
    """Pointing word -> the verbs before which it begins a clause."""

    @property
    def leaning(self) -> frozenset[str]:
        """All words that begin a leaning clause."""
        return self.subordinators | self.half_subordinators


@cache
def grammar() -> Grammar:
    """The lists, read once."""
    data = tomllib.loads(files("extract").joinpath("data/clauses.toml").read_text(encoding="utf-8"))
    point = data.pop("pointers")
    pointers: dict[str, frozenset[str]] = {}
    for number in ("singular", "plural"):
        for word in point[number]:
            pointers[word] = pointers.get(word, frozenset()) | frozenset(point[f"behind_{number}"])
    urging = Phrases(data.pop("urgings")["words"])
    opening = Phrases(data.pop("opener_phrases")["words"])
    return Grammar(
        pointers=pointers,
        opener_phrases=opening,
        urgings=urging,
        **{name: frozenset(table["words"]) for name, table in data.items()},
    )


PARTICLES = grammar().particles
"""Words behind a verb that carry part of its sense."""
