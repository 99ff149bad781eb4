"""The lists of data/phases.toml, and whether a stretch of words holds one of their phrases."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from extract.measures.wording import pieces

Index = dict[str, tuple[tuple[str, ...], ...]]


@dataclass(frozen=True, slots=True)
class PhaseWords:
    """Phrases by their first word; each list's reason stands in the data file."""

    general_before: Index
    general_behind: Index
    result_before: Index
    verdict: Index
    target_before: Index
    found_before: Index
    target_behind: Index
    found_behind: Index
    wish: frozenset[str]
    """Words of aim that no "now" outweighs."""
    past: Index
    present: Index
    new: Index
    defects: frozenset[str]
    """Attributes that are faults by nature."""
    bring: frozenset[str]
    """Base forms of verbs that bring a thing to the job."""
    work: frozenset[str]
    """Base forms of the verbs of work."""
    subjects: frozenset[str]
    leads: frozenset[str]
    """Small words right before a figure that are signs of their own."""
    follows: frozenset[str]
    """Small words right behind one."""
    reads: frozenset[str]
    """Base forms of verbs of reading and measuring."""
    plain_verbs: frozenset[str]
    """Base forms of common verbs, each a sign of its own."""
    articles: frozenset[str]
    """Articles and other words that say which thing is meant."""
    aged: frozenset[str]
    """Adjectives of a thing that was there before the work."""
    fresh: frozenset[str]
    """Adjectives of a thing that is brought to the job."""
    instruments: frozenset[str]
    """Nouns of what reads a figure."""
    openings: frozenset[str]
    """Words that open a clause and tell of whom or what it speaks."""
    again: frozenset[str]
    """Words that tell that the work is done, or is checked."""


@cache
def phase_words() -> PhaseWords:
    """The lists, read once."""
    data = tomllib.loads(files("extract").joinpath("data/phases.toml").read_text(encoding="utf-8"))
    verbs = tomllib.loads(files("extract").joinpath("data/verbs.toml").read_text(encoding="utf-8"))
    return PhaseWords(
        general_before=_index(data["general"]["before"]),
        general_behind=_index(data["general"]["behind"]),
        result_before=_index(data["as_left"]["before"]),
        verdict=_index(data["as_left"]["verdict"]),
        target_before=_index(data["target"]["before"]),
        found_before=_index(data["as_found"]["before"]),
        target_behind=_index(data["target"]["behind"]),
        found_behind=_index(data["as_found"]["behind"]),
        wish=frozenset(data["target"]["wish"]),
        past=_index(data["strong_past"]["before"]),
        new=_index(data["new"]["before"]),
        present=_index(data["present"]["before"]),
        defects=frozenset(data["nature"]["defects"]),
        bring=frozenset(data["new"]["verbs"]),
        **{name: frozenset(listed) for name, listed in data["signs"].items()},
        work=frozenset(
            verb
            for group, verbs in verbs["work"].items()
            if group not in ("checking", "marking")
            for verb in verbs
            if " " not in verb
        ),
    )


def holds(index: Index, words: tuple[str, ...]) -> bool:
    """True where one of the phrases stands in a stretch of words."""
    return any(
        words[at : at + len(phrase)] == phrase for at, word in enumerate(words) for phrase in index.get(word, ())
    )


def _index(phrases: Iterable[str]) -> Index:
    index: dict[str, list[tuple[str, ...]]] = {}
    for phrase in phrases:
        cut = pieces(phrase)
        index.setdefault(cut[0], []).append(cut)
    return {first: tuple(cuts) for first, cuts in index.items()}
