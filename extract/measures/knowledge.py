"""The lists of data/measures.toml and data/phases.toml, read once."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any

from extract.measures.wording import pieces

ANY_KIND = "any"
"""The kind of an attribute that is called by its noun, whatever the unit."""


@dataclass(frozen=True, slots=True)
class ClauseWords:
    """Small words by which clauses, noun phrases and their links are told apart."""

    openers: frozenset[str]
    subjects: frozenset[str]
    being: frozenset[str]
    prepositions: frozenset[str]
    links: frozenset[str]
    begins_anew: frozenset[str]
    approximate: frozenset[str]
    reads: frozenset[str]
    loose: frozenset[str]
    no_nouns: frozenset[str]
    no_adjectives: frozenset[str]
    behind_letter: frozenset[str]
    ordinals: frozenset[str]
    determiners: frozenset[str]


@dataclass(frozen=True, slots=True)
class Hint:
    """A name for what is measured, and the phrases that speak for it."""

    name: str
    kinds: frozenset[str]
    """Kinds of unit; any where empty."""
    before: tuple[tuple[str, ...], ...]
    behind: tuple[tuple[str, ...], ...]
    near: frozenset[str]


@dataclass(frozen=True, slots=True)
class Knowledge:
    """What speech at any bench takes for granted; each list's reason stands in the data file."""

    clause: ClauseWords
    kind_default: dict[str, str]
    """Kind of unit -> attribute where nothing else is said."""
    kin: frozenset[frozenset[str]]
    """Kinds whose units are said for one another."""
    usual: dict[str, str]
    """Head noun -> what a bare length of it usually is."""
    worked_away: frozenset[str]
    """Attributes that work makes much smaller."""
    moves: dict[str, str]
    """Direction right before a figure -> attribute."""
    removes: frozenset[str]
    looks: dict[str, str]
    """Adjective said of a thing's looks -> attribute."""
    wet: frozenset[str]
    """What makes a percentage one of moisture."""
    loose_nouns: tuple[str, ...]
    """Nouns that name a measure of any kind."""
    more: tuple[tuple[str, ...], ...]
    """Words of a difference, behind a figure."""
    ending: dict[str, str]
    """Word right before a break -> attribute."""
    by: tuple[tuple[str, ...], ...]
    """Words of a difference, before a figure."""
    across: dict[str, str]
    """Preposition before a figure -> attribute."""
    solutions: frozenset[str]
    pulled: frozenset[str]
    """What a weight is hung on to measure a pull."""
    probed: frozenset[str]
    """What is slid into a gap."""
    strands: frozenset[str]
    """Long thin things: a small figure of them is the diameter."""
    fixings: frozenset[str]
    fixing_inches: float
    """From this length on a bare figure of a fixing is its length."""
    changes: dict[str, str]
    """Verb of change -> attribute."""
    every: frozenset[str]
    every_attributes: dict[str, str]
    """Kind -> attribute of a figure behind "every"."""
    common: dict[str, list[str]]
    """Kind -> the attributes that it is most often of."""
    naming: frozenset[str]
    """What may stand between a noun and the figure that it names."""
    cues: frozenset[str]
    """Small words beside a figure that point to what it measures."""
    narrows: frozenset[str]
    musing: frozenset[str]
    """Words of one who thinks before a figure."""
    strays: frozenset[str]
    """Words behind a percentage that make it a deviation."""
    stands: frozenset[str]
    """Base forms of verbs that say where a thing is."""
    kept: frozenset[str]
    """Attributes that are not carried to the next figure."""
    heated: frozenset[str]
    """Things whose bare number is a temperature."""
    leaves: dict[str, str]
    """Verb of work -> the measure that it leaves."""
    unmistakable: frozenset[tuple[str, ...]]
    """Words of measure that hold even where the unit is of another kind."""
    slips: frozenset[str]
    """Kinds whose units are said by slip for a size."""
    vague: frozenset[str]
    """Parts of anything: "side", "end"; never what "it" stands for."""
    series: tuple[str, ...]
    not_things: frozenset[str]
    not_lone: frozenset[str]
    """People and talk: no things alone, but "feed dog" and "hook point" are."""
    either: frozenset[str]
    """Small amounts behind "a", things otherwise."""
    round_series: tuple[str, ...]
    """What the figures of "a ten mil dowel by seventy" measure, the thing being round."""
    times: frozenset[str]
    readers: frozenset[str]
    lone_readers: frozenset[str]
    """Readers only where nothing stands before them: a tape, not a gasket tape."""
    fillers: frozenset[str]
    restated: tuple[tuple[str, ...], ...]
    takes_back: tuple[tuple[str, ...], ...]
    ought: frozenset[str]
    """Between two figures: what the first should be."""
    pronouns: frozenset[str]
    sides: tuple[tuple[str, ...], ...]
    place_prepositions: frozenset[str]
    hints: tuple[Hint, ...]

    def akin(self, one: str, other: str) -> bool:
        """True where a unit of one kind may stand for the other."""
        return one == other or ANY_KIND in (one, other) or frozenset((one, other)) in self.kin


@cache
def knowledge() -> Knowledge:
    """The lists of data/measures.toml."""
    data = _read("measures.toml")
    return Knowledge(
        clause=ClauseWords(
            **{name: frozenset(words) for name, words in data["clause"].items()},
            reads=frozenset(data["readers"]["verbs"]) | frozenset(data["readers"]["verbs_like_nouns"]),
        ),
        kind_default=data["kinds"]["default"],
        kin=frozenset(frozenset(pair) for pair in data["kinds"]["kin"]),
        usual={noun: attribute for attribute, nouns in data["usual"].items() for noun in nouns},
        worked_away=frozenset(data["shapes"]["worked_away"]),
        moves=data["shapes"]["moves"],
        removes=frozenset(data["removes"]["verbs"]),
        wet=frozenset(data["wet"]["words"]),
        loose_nouns=tuple(data["loose"]["nouns"]),
        more=_split(data["loose"]["more"]),
        ending={word: attribute for attribute, words in data["ending"].items() for word in words},
        by=_split(data["loose"]["by"]),
        across={word: attribute for attribute, words in data["across"].items() for word in words},
        solutions=frozenset(data["solution"]["words"]),
        pulled=frozenset(data["pulled"]["words"]),
        probed=frozenset(data["probed"]["words"]),
        strands=frozenset(data["fixing"]["strands"]),
        fixings=frozenset(data["fixing"]["things"]),
        fixing_inches=data["fixing"]["from_inches"],
        changes={verb: attribute for attribute, verbs in data["changes"].items() for verb in verbs},
        every=frozenset(data["every"]["words"]),
        every_attributes=data["every"]["attributes"],
        common=data["common"],
        naming=frozenset(data["naming"]["words"]),
        cues=frozenset(data["cues"]["words"]),
        narrows=frozenset(data["narrows"]["verbs"]),
        musing=frozenset(data["musing"]["words"]),
        strays=frozenset(data["strays"]["words"]),
        stands=frozenset(data["stands"]["verbs"]),
        kept=frozenset(data["kept"]["never"]),
        heated=frozenset(data["heated"]["words"]),
        looks={word: attribute for attribute, words in data["looks"].items() for word in words},
        leaves={verb: attribute for attribute, verbs in data["leaves"].items() for verb in verbs},
        unmistakable=frozenset(pieces(phrase) for phrase in data["shapes"]["unmistakable"]),
        slips=frozenset(data["shapes"]["slips"]),
        vague=frozenset(data["places"]["sides"]),
        series=tuple(data["shapes"]["series"]),
        round_series=tuple(data["shapes"]["round_series"]),
        times=frozenset(data["not_things"]["times"]),
        not_things=frozenset(
            noun for group, nouns in data["not_things"].items() if group != "either" for noun in nouns
        ),
        not_lone=frozenset(data["not_things"]["people"]) | frozenset(data["not_things"]["talk"]),
        either=frozenset(data["not_things"]["either"]),
        lone_readers=frozenset(data["readers"]["lone"]),
        readers=frozenset(data["readers"]["tools"]),
        fillers=frozenset(data["between"]["fillers"]),
        restated=_split(data["between"]["restated"]),
        takes_back=_split(data["between"]["takes_back"]),
        ought=frozenset(data["between"]["ought"]),
        pronouns=frozenset(data["between"]["pronouns"]),
        sides=_split(data["places"]["sides"]),
        place_prepositions=frozenset(data["places"]["prepositions"]),
        hints=tuple(_hint(row) for row in data["hint"]),
    )


def _hint(row: dict[str, Any]) -> Hint:
    return Hint(
        row["name"],
        frozenset(row.get("kinds", ())),
        _split(row.get("before", [])),
        _split(row.get("behind", [])),
        frozenset(row.get("near", ())),
    )


def _split(phrases: list[str]) -> tuple[tuple[str, ...], ...]:
    return tuple(sorted((pieces(phrase) for phrase in phrases), key=len, reverse=True))


def _read(name: str) -> dict[str, Any]:
    return tomllib.loads(files("extract").joinpath(f"data/{name}").read_text(encoding="utf-8"))
