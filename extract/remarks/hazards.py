"""Cautions that the trade's hazards call for, once a hazard, where it is first named.

Takes "lead paint", "a heat gun", "steam the bow"; refuses "a mains lead" for the metal, "run out of steam", "can't" for
the glue, and hazards of other jobs.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from extract.clauses.phrases import words_of
from extract.clauses.terms import singular
from extract.remarks.reading import Reading
from extract.spans import Warned
from extract.trade import Hazard

_NEAR = 12
_DENIALS = frozenset({"no", "not", "without", "never", "instead"})


@dataclass(frozen=True, slots=True)
class Sense:
    """Where a word names the hazard: see data/senses.toml."""

    not_after: frozenset[str]
    not_before: frozenset[str]
    near: frozenset[str]


@cache
def senses() -> dict[str, Sense]:
    """Ambiguous word -> its dangerous sense."""
    data = tomllib.loads(files("extract").joinpath("data/senses.toml").read_text(encoding="utf-8"))
    return {
        word: Sense(*(frozenset(row.get(name, ())) for name in ("not_after", "not_before", "near")))
        for word, row in data.items()
    }


def find_hazards(reading: Reading, hazards: tuple[Hazard, ...]) -> tuple[Warned, ...]:
    """The cautions in order of first mention. Linear in the number of words."""
    by_first: dict[str, list[tuple[tuple[str, ...], Hazard]]] = {}
    for hazard in hazards:
        for said in hazard.said:
            phrase = words_of(said.replace("-", " - "))
            by_first.setdefault(phrase[0], []).append((phrase, hazard))
    warned: dict[str, Warned] = {}
    for index, piece in enumerate(reading.pieces):
        if reading.told[index]:
            continue
        for at in range(piece.start, piece.end):
            for phrase, hazard in _begun_at(reading, by_first, at):
                if hazard.name not in warned and _is_named(reading, phrase, at):
                    warned[hazard.name] = Warned(at, hazard.caution, hazard.source, said=False)
    return _one_a_place(tuple(sorted(warned.values(), key=lambda one: one.start)))


def _one_a_place(warned: tuple[Warned, ...]) -> tuple[Warned, ...]:
    """Of two hazards that the same words name, the trade's own, which stands first."""
    return tuple({one.start: one for one in reversed(warned)}.values())[::-1]


def _begun_at(
    reading: Reading, by_first: dict[str, list[tuple[tuple[str, ...], Hazard]]], at: int
) -> list[tuple[tuple[str, ...], Hazard]]:
    word = reading.bench.word(at)
    return [found for first in dict.fromkeys((word, singular(word))) for found in by_first.get(first, ())]


def _is_named(reading: Reading, phrase: tuple[str, ...], at: int) -> bool:
    """True where the phrase stands at a token in its dangerous sense and isn't denied."""
    words = reading.bench.lower
    end = at + len(phrase)
    said = words[at:end]
    if len(said) < len(phrase) or any(
        want not in (word, singular(word)) for want, word in zip(phrase, said, strict=True)
    ):
        return False
    if reading.bench.word(at - 1) in _DENIALS:
        return False
    sense = senses().get(phrase[0]) if len(phrase) == 1 else None
    if sense is None:
        return True
    if reading.bench.word(at - 1) in sense.not_after or reading.bench.word(end) in sense.not_before:
        return False
    around = set(words[max(0, at - _NEAR) : at]) | set(words[end : end + _NEAR])
    return not sense.near or bool(around & sense.near)
