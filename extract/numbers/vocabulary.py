"""The words of which numbers are made, read from data/numbers.toml."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Literal

WordKind = Literal[
    "ones",
    "teens",
    "tens",
    "scale",
    "zero",
    "oh",
    "ordinal",
    "part",
    "couple",
    "article",
    "and",
    "point",
    "minus",
    "dash",
]
_VALUED = ("ones", "teens", "tens", "scale", "zero", "oh", "ordinal", "part", "couple")


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """Words with their kind and value, and the lists that the grammar asks."""

    words: dict[str, tuple[WordKind, int]]
    vulgar: dict[str, Fraction]
    links: tuple[tuple[str, ...], ...]
    """What may stand between the ends of a range, longest first."""
    between: frozenset[str]
    spread: frozenset[str]
    marks: frozenset[int]
    """Denominators of a rule: halves to hundred-and-twenty-eighths."""
    denominators: frozenset[int]
    duration_nouns: frozenset[str]
    comma_units: frozenset[str]
    no_point: frozenset[str]
    pronoun_before: frozenset[str]
    one_behind: frozenset[str]
    """Words behind "one" that make it a pronoun."""


@cache
def vocabulary() -> Vocabulary:
    """The list that comes with the package, read once."""
    data = tomllib.loads((Path(__file__).parent.parent / "data" / "numbers.toml").read_text(encoding="utf-8"))
    words: dict[str, tuple[WordKind, int]] = {}
    for kind in _VALUED:
        words.update({word: (kind, value) for word, value in data[kind].items()})
    for kind, listed in data["words"].items():
        words.update(dict.fromkeys(listed, (kind, 0)))
    marks = frozenset(data["denominators"]["marks"])
    return Vocabulary(
        words=words,
        vulgar={sign: Fraction(text) for sign, text in data["vulgar"].items()},
        links=tuple(sorted((tuple(link.split()) for link in data["range"]["links"]), key=len, reverse=True)),
        between=frozenset(data["range"]["between"]),
        spread=frozenset(data["range"]["spread"]),
        marks=marks,
        denominators=marks | frozenset(data["denominators"]["others"]),
        duration_nouns=frozenset(data["duration"]["nouns"]),
        comma_units=frozenset(data["comma"]["units"]),
        one_behind=frozenset(data["one"]["behind"]),
        pronoun_before=frozenset(data["pronoun"]["before"]),
        no_point=frozenset(data["no_point"]["before"]),
    )
