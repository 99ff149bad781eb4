"""The words of data/step_phrases.toml."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files


@dataclass(frozen=True, slots=True)
class PhraseWords:
    """By what instructions are cut short and judged; the reasons stand in the data file."""

    tails: frozenset[str]
    places: frozenset[str]
    not_adverbs: frozenset[str]
    each: frozenset[str]
    being: frozenset[str]
    clause_verbs: frozenset[str]
    alone: frozenset[str]
    hanging: frozenset[str]
    closing: frozenset[str]
    nothing: frozenset[str]
    putting: frozenset[str]
    along: frozenset[str]
    needs_object: frozenset[str]
    needs_place: frozenset[str]
    found_there: frozenset[str]


@cache
def phrase_words() -> PhraseWords:
    """The lists, read once."""
    data = tomllib.loads(files("extract").joinpath("data/step_phrases.toml").read_text(encoding="utf-8"))
    return PhraseWords(**{name: frozenset(table["words"]) for name, table in data.items()})
