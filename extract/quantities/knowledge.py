"""The word lists of this stage, read once from the data files."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from extract.quantities.phrases import Phrases

_DATA = Path(__file__).parent.parent / "data"


@dataclass(frozen=True, slots=True)
class Typical:
    """Figures that are at home in one unit where the words beside them speak of it."""

    unit: str
    low: float
    high: float
    near: frozenset[str]
    before: str = ""
    """Name of a list of phrases, one of which must stand right before, in place of words near."""


@dataclass(frozen=True, slots=True)
class Links:
    """What may join two numbers of one kind."""

    strong: frozenset[str]
    weak: frozenset[str]
    correction: frozenset[str]
    filler: frozenset[str]
    most: int


@dataclass(frozen=True, slots=True)
class Evidence:
    """What speaks for a bare number being a measure."""

    enough: float
    reach_cues: int
    reach_measures: int
    skip: frozenset[str]
    between: frozenset[str]
    before: dict[str, Phrases]
    after: dict[str, Phrases]
    typical: tuple[Typical, ...]
    weights: dict[str, float]
    lasting: Phrases
    not_lasting: Phrases
    unsettled: tuple[tuple[str, frozenset[str], frozenset[str]], ...]
    """Kind, verbs and the small words right before a figure, with which it matters whatever its unit."""
    units_alone: dict[str, tuple[str, ...]]
    """Names of units, by kind, that a speaker says without a figure for what is about to be read off."""
    translates: frozenset[str]
    """Words with which a figure is said again in another unit."""
    result: frozenset[str]
    """Words before a figure that was worked out."""
    wrenched: Phrases
    """Behind a figure that a wrench is set to."""
    unsettled_within: int
    unsettled_then: frozenset[str]
    unsettled_about: frozenset[str]
    """Words that may stand between that small word and the figure."""
    unsettled_read: dict[str, Phrases]
    """By kind, what stands behind a figure that is read on an instrument of it."""
    unsettled_of: frozenset[str]
    """Stuffs that aren't counted, so that a bare figure of one lacks its unit."""
    unsettled_parts: frozenset[str]
    """Words near such a figure with which it is a share."""
    lasting_verbs: Phrases
    lasting_then: frozenset[str]
    lasting_near: frozenset[str]
    lasting_ends: Phrases
    links: Links


@dataclass(frozen=True, slots=True)
class Knowledge:
    """Phrases by list name."""

    before: dict[str, Phrases]
    after: dict[str, Phrases]
    idioms: Phrases
    year: dict[str, Any]
    spinning: Phrases
    """Words before a speed of turning."""
    year_before: frozenset[str]
    counted_nouns: frozenset[str]
    counted_before: Phrases
    counted_after: Phrases
    stamped: frozenset[str]
    stamped_behind: Phrases
    abrasive_before: Phrases
    coarsest: int
    """The lowest grit that is said without the word."""
    by_size: frozenset[str]
    """Nouns that a fraction names a size of."""
    shared_after: Phrases
    """Behind a half of the measure just said."""
    bounded_one: Phrases
    """Words before a "one" that is a figure."""
    bounded_then: frozenset[str]
    clock: frozenset[str]
    """Words of appointments."""
    wound: frozenset[str]
    """What is wound round something, so many turns of it."""
    past: frozenset[str]
    seasoned: frozenset[str]
    money: frozenset[str]
    grits: frozenset[int]
    threads: frozenset[str]
    up_to_behind: frozenset[str]
    hedge_only: dict[str, frozenset[str]]
    """Words before "say" with which alone it hedges."""
    hedge_unless: dict[str, frozenset[str]]
    """Words before "like" and "say" with which they hedge nothing."""
    manner: dict[str, dict[str, Phrases]]
    kinds: dict[str, tuple[str, ...]]
    evidence: Evidence


def _read(name: str) -> dict[str, Any]:
    return tomllib.loads((_DATA / name).read_text(encoding="utf-8"))


def _evidence(data: dict[str, Any]) -> Evidence:
    links = data["links"]
    return Evidence(
        enough=data["enough"],
        reach_cues=data["reach_cues"],
        reach_measures=data["reach_measures"],
        between=frozenset(data["between"]["words"]),
        skip=frozenset(data["skip"]["words"]),
        before={name: Phrases(listed) for name, listed in data["before"].items()},
        after={name: Phrases(listed) for name, listed in data["after"].items()},
        typical=tuple(
            Typical(row["unit"], row["from"], row["to"], frozenset(row.get("near", ())), row.get("before", ""))
            for row in data["typical"]
        ),
        weights=data["weights"],
        lasting=Phrases(data["lasting"]["before"]),
        lasting_verbs=Phrases(data["lasting"]["verbs"]),
        lasting_then=frozenset(data["lasting"]["then"]),
        lasting_near=frozenset(data["lasting"]["near"]),
        lasting_ends=Phrases(data["lasting"]["ends"]),
        not_lasting=Phrases(data["lasting"]["not_before"]),
        unsettled=tuple(
            (row["kind"], frozenset(row["verbs"]), frozenset(row["before"])) for row in data["unsettled"]["set"]
        ),
        units_alone={kind: tuple(words) for kind, words in data["units_alone"].items()},
        translates=frozenset(data["translates"]["words"]),
        result=frozenset(data["result"]["words"]),
        wrenched=Phrases(data["unsettled"]["wrenched"]),
        unsettled_within=data["unsettled"]["within"],
        unsettled_then=frozenset(data["unsettled"]["then"]),
        unsettled_about=frozenset(data["unsettled"]["about"]),
        unsettled_read={kind: Phrases(rows) for kind, rows in data["unsettled"]["read"].items()},
        unsettled_of=frozenset(data["unsettled"]["stuffs"]),
        unsettled_parts=frozenset(data["unsettled"]["parts"]),
        links=Links(
            frozenset(links["strong"]),
            frozenset(links["weak"]),
            frozenset(links["correction"]),
            frozenset(links["filler"]),
            links["most"],
        ),
    )


@cache
def knowledge() -> Knowledge:
    """All lists."""
    no, manner, evidence = _read("not_measures.toml"), _read("manner.toml"), _read("evidence.toml")
    return Knowledge(
        before={name: Phrases(listed) for name, listed in no["before"].items()},
        after={name: Phrases(listed) for name, listed in no["after"].items()},
        idioms=Phrases(no["idioms"]["phrases"]),
        year=no["year"],
        spinning=Phrases(evidence["spinning"]["before"]),
        year_before=frozenset(no["year"]["before"]),
        counted_nouns=frozenset(no["counted"]["nouns"]),
        counted_before=Phrases(no["counted"]["before"]),
        counted_after=Phrases(no["counted"]["after"]),
        stamped=frozenset(no["stamped"]["near"]),
        stamped_behind=Phrases(no["stamped"]["behind"]),
        abrasive_before=Phrases(no["abrasive"]["before"]),
        coarsest=no["abrasive"]["coarsest"],
        by_size=frozenset(no["by_size"]["nouns"]),
        shared_after=Phrases(no["counted"]["shared"]),
        bounded_one=Phrases(no["bounded"]["before"]),
        bounded_then=frozenset(no["bounded"]["then"]),
        seasoned=frozenset(no["past"]["seasoned"]),
        clock=frozenset(no["appointment"]["near"]),
        wound=frozenset(no["wound"]["near"]),
        past=frozenset(no["past"]["near"]),
        grits=frozenset(no["grits"]["sizes"]),
        money=frozenset(no["money"]["near"]),
        threads=frozenset(no["threads"]["written"]),
        up_to_behind=frozenset(manner.pop("up_to")["behind"]),
        hedge_only={word: frozenset(listed) for word, listed in manner.pop("only").items()},
        hedge_unless={word: frozenset(listed) for word, listed in manner.pop("unless").items()},
        manner={name: {side: Phrases(listed) for side, listed in sides.items()} for name, sides in manner.items()},
        kinds={name: tuple(listed) for name, listed in evidence["kinds"].items()},
        evidence=_evidence(evidence),
    )
