"""The phrases of data/talk.toml."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

Phrase = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Talk:
    """Phrases that are no work, by what they tell; the reasons stand in the data file."""

    history: frozenset[Phrase]
    returns: frozenset[Phrase]
    before: frozenset[Phrase]
    later: frozenset[Phrase]
    fillers: frozenset[Phrase]
    openers: frozenset[str]
    exclamations: frozenset[str]
    person: dict[str, str]
    present: dict[str, str]


@cache
def talk() -> Talk:
    """The lists, read once."""
    data = tomllib.loads(files("extract").joinpath("data/talk.toml").read_text(encoding="utf-8"))

    def phrases(name: str) -> frozenset[Phrase]:
        return frozenset(
            tuple(said.replace("y'", "y' ").replace("let's", "let 's").split()) for said in data[name]["phrases"]
        )

    def pairs(name: str) -> dict[str, str]:
        return {said: meant for said, meant in data[name].items() if said != "reason"}

    return Talk(
        history=phrases("history"),
        returns=phrases("return"),
        before=phrases("before"),
        later=phrases("later"),
        fillers=phrases("fillers"),
        openers=frozenset(data["openers"]["words"]),
        exclamations=frozenset(data["exclamations"]["words"]),
        person=pairs("person"),
        present=pairs("present"),
    )


def phrase_length(words: tuple[str, ...], at: int, phrases: frozenset[Phrase]) -> int:
    """How many words of the longest phrase begin at a place, 0 where none does."""
    if at >= len(words):
        return 0
    likely = _by_first_word(phrases).get(words[at], ())
    return max((len(phrase) for phrase in likely if phrase == words[at : at + len(phrase)]), default=0)


@cache
def _by_first_word(phrases: frozenset[Phrase]) -> dict[str, tuple[Phrase, ...]]:
    by_word: dict[str, tuple[Phrase, ...]] = {}
    for phrase in phrases:
        by_word[phrase[0]] = (*by_word.get(phrase[0], ()), phrase)
    return by_word
