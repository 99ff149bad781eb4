"""The verbs and nouns of data/verbs.toml."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass, field
from functools import cache
from importlib.resources import files
from typing import Literal

VerbKind = Literal["work", "light", "idle", "unknown"]
NounKind = Literal["people", "abstract", "time", "body", "measure", "damage", "film"]


@dataclass(frozen=True, slots=True)
class BenchWords:
    """What the bench says of its verbs and nouns; each list's reason stands in the data file."""

    work: frozenset[str]
    """Verbs of work, with their particle where that belongs to them: "file", "let down"."""
    light: frozenset[str]
    idle: frozenset[str]
    states: dict[str, str]
    """State a thing is said to be in -> what was done to it: "off" -> "take off"."""
    plain_verbs: frozenset[str]
    plain: dict[str, str]
    """Particle -> plain verb for a light verb that stands with it: "off" -> "remove"."""
    tool_verbs: dict[str, str]
    """Tool or material -> what it is for: "torque wrench" -> "tighten"."""
    part_of: frozenset[str]
    """Heads that say little without the whole: "end", "edge"."""
    belongings: frozenset[str]
    """Nouns that say little without what they belong to: "lead", "corner"."""
    compound_tools: frozenset[str]
    """Tools that another noun before them makes another thing: "bottoming cloth"."""
    containers: dict[str, str]
    """Where a thing is put to be worked on -> the work: "cleaner" -> "clean"."""
    irregular: dict[str, str]
    """Past form -> base form, where the lemmatiser is often wrong: "ground" -> "grind"."""
    damage_verbs: frozenset[str]
    """Verbs that tell a fault where they are told of the thing itself: "the knob's cracked"."""
    safety_gear: frozenset[str]
    """What guards the worker: "gloves"."""
    nouns: dict[str, NounKind]
    """Nouns that are no thing on the bench."""
    figure_verbs: dict[str, str]
    """Unit behind a thing -> what was done to it: "nm" -> "tighten"."""

    means: dict[str, str]
    """The plain name of what has another: "prise" -> "remove"."""
    means_with: dict[str, str]
    """The same where verb and object decide it: "fit string" -> "string up"."""
    kind_verbs: dict[str, str]
    """Kind of unit behind a thing -> what was done to it: "torque" -> "tighten"."""
    classes: dict[str, str] = field(default_factory=dict)
    """Verb of work -> kind of work: "file" -> "cutting"."""
    same_past: frozenset[str] = frozenset({"put", "set", "cut", "let", "shut", "split", "hit", "spread", "bid", "rid"})
    """Verbs whose past is spelt like their base form."""

    def kind(self, verb: str, particle: str = "") -> VerbKind:
        """What sort of verb it is, with its particle taken first: "let down" is work, "let" is light."""
        if f"{verb} {particle}" in self.work:
            return "work"
        if f"{verb} {particle}" in self.idle:
            return "idle"
        for kind, verbs in (("work", self.work), ("light", self.light), ("idle", self.idle)):
            if verb in verbs:
                return kind  # type: ignore[return-value]
        return "work" if verb.startswith("re") and verb[2:].lstrip("-") in self.work else "unknown"

    def class_of(self, verb: str, particle: str = "") -> str | None:
        """The kind of work: "cutting", "fitting"; null for a verb that is in no list of work."""
        return self.classes.get(f"{verb} {particle}") or self.classes.get(verb)

    def knows(self, verb: str) -> bool:
        """True for a base form of work or a light verb."""
        return verb in self.work or verb in self.light or (verb.startswith("re") and verb[2:] in self.work)


@cache
def bench_words() -> BenchWords:
    """The lists, read once."""
    data = tomllib.loads(files("extract").joinpath("data/verbs.toml").read_text(encoding="utf-8"))
    return BenchWords(
        work=frozenset(verb for verbs in data["work"].values() for verb in verbs),
        classes={verb: kind for kind, verbs in data["work"].items() for verb in verbs},
        light=frozenset(data["light"]["verbs"]),
        idle=frozenset(verb for verbs in data["idle"].values() for verb in verbs),
        states={state: verb for state, verb in data["states"].items() if state != "reason"},
        plain_verbs=frozenset(data["plain"]["verbs"]),
        plain={particle: verb for particle, verb in data["plain"].items() if particle not in {"reason", "verbs"}},
        tool_verbs={tool: verb for verb, tools in data["tools"].items() if verb != "reason" for tool in tools},
        means={said: plain for plain, verbs in data["means"].items() if plain != "reason" for said in verbs},
        means_with={said: plain for said, plain in data["means_with"].items() if said != "reason"},
        kind_verbs={kind: verb for kind, verb in data["unit_kinds"].items() if kind != "reason"},
        figure_verbs={unit: verb for verb, units in data["figures"].items() for unit in units},
        irregular={past: base for past, base in data["irregular"].items() if past != "reason"},
        damage_verbs=frozenset(data["damage_verbs"]["words"]),
        safety_gear=frozenset(data["safety_gear"]["words"]),
        part_of=frozenset(data["part_of"]["words"]),
        belongings=frozenset(data["belongings"]["words"]),
        compound_tools=frozenset(data["compound_tools"]["words"]),
        containers={place: verb for place, verb in data["containers"].items() if place != "reason"},
        nouns={noun: kind for kind, nouns in data["nouns"].items() for noun in nouns},
    )
