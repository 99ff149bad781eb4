"""What is done, under one name: "tap out", "pull" and "desolder" are all "remove"; "ream" is none of them.

Rests on the plain names that the extractor gives to verbs (extract/data/verbs.toml) and on data/acts.toml.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from extract.clauses.words import bench_words


@dataclass(frozen=True, slots=True)
class ActWords:
    """The lists of data/acts.toml; each list's reason stands there."""

    same: dict[str, str]
    light: frozenset[str]
    opposite: frozenset[tuple[str, str]]
    """Pairs of which one undoes the other, both ways round."""
    preparing: frozenset[str]
    first: frozenset[str]
    last: frozenset[str]
    applying: frozenset[str]
    applied: dict[str, str]
    """Material -> what putting it on is: "epoxy" -> "glue"."""
    old: frozenset[str]
    common: frozenset[str]
    empty: frozenset[str]
    bare: frozenset[str]
    vague: frozenset[str]
    fresh: frozenset[str]
    worn: frozenset[str]
    back: frozenset[str]
    again: dict[str, str]
    """Part -> what gluing it on again is called: "neck" -> "reset"."""


@cache
def act_words() -> ActWords:
    """The lists, read once."""
    data = tomllib.loads(files("publish").joinpath("procedures/data/acts.toml").read_text(encoding="utf-8"))
    applied = data["applied"]
    return ActWords(
        same={said: name for name, acts in data["same"].items() for said in acts},
        light=frozenset(data["light"]["acts"]),
        opposite=frozenset(pair for one, other in data["opposite"]["pairs"] for pair in ((one, other), (other, one))),
        preparing=frozenset(data["preparing"]["acts"]),
        first=frozenset(data["first"]["acts"]),
        last=frozenset(data["last"]["acts"]),
        applying=frozenset(applied["with"]),
        applied={word: act for act in ("glue", "grease") for word in applied[act]},
        old=frozenset(applied["old"]),
        common=frozenset(data["common"]["things"]),
        empty=frozenset(data["empty"]["words"]),
        bare=frozenset(data["naming"]["bare"]),
        vague=frozenset(data["naming"]["vague"]),
        fresh=frozenset(data["naming"]["fresh"]),
        worn=frozenset(data["naming"]["worn"]),
        back=frozenset(data["naming"]["back"]),
        again=data["naming"]["again"],
    )


def act_of(verb: str) -> str:
    """The one name of a verb as the record has it: "tap out / remove" and "remove" are "remove"."""
    said, _, plain = (part.strip() for part in verb.casefold().partition("/"))
    same, means = act_words().same, bench_words().means
    for name in (said, plain, means.get(said, ""), _bare(said), means.get(_bare(said), "")):
        if name in same:
            return same[name]
    return plain or means.get(said) or said


def begins_with_verb(words: tuple[str, ...]) -> str | None:
    """The verb that an instruction begins with, two words of it where they belong together; None where it has none."""
    if not words:
        return None
    known = bench_words()
    two = " ".join(words[:2])
    if len(words) > 1 and (two in known.means or two in known.work or two in act_words().same):
        return two
    if known.kind(words[0]) != "unknown" or words[0] in act_words().same or words[0] in known.means:
        return words[0]
    return None


def with_particle(verb: str, rest: tuple[str, ...]) -> str:
    """The verb with the particle that stands behind its object: "tap out" of "tap the nut out"."""
    if verb in act_words().same:
        return verb
    means = bench_words().means
    return next((f"{verb} {word}" for word in rest if f"{verb} {word}" in means), verb)


def _bare(verb: str) -> str:
    return verb.removeprefix("re") if verb.startswith("re") and len(verb) > 5 else verb.split()[0] if verb else ""
