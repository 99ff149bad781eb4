"""The word lists of data/sentences.toml."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

Phrase = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SentenceWords:
    """Words and phrases by what they tell of a sentence's border; the reasons stand in the data file."""

    never_end: frozenset[str]
    may_end: frozenset[str]
    openers: frozenset[Phrase]
    continuers: frozenset[Phrase]
    danglers: frozenset[Phrase]
    subjects: frozenset[Phrase]
    joins: frozenset[Phrase]


@cache
def sentence_words() -> SentenceWords:
    """The lists, read once."""
    data = tomllib.loads(files("extract").joinpath("data/sentences.toml").read_text(encoding="utf-8"))
    phrases = {
        name: frozenset(tuple(said.split()) for said in data[name]["words"])
        for name in ("openers", "continuers", "danglers", "subjects", "joins")
    }
    short = data["abbreviations"]
    return SentenceWords(never_end=frozenset(short["never_end"]), may_end=frozenset(short["may_end"]), **phrases)
