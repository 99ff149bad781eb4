"""Words of the plain ways of taking something back, read from data/plain_takebacks.toml."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from extract.corrections.phrases import Phrases
from extract.corrections.templates import Templates
from extract.roots import root


@dataclass(frozen=True, slots=True)
class PlainWords:
    """Phrases by what they do; the data file says what each list is for."""

    denials: Phrases
    own: frozenset[str]
    softening: Phrases
    free: frozenset[str]
    asking: frozenset[str]
    supposed: frozenset[str]
    no_verbs: frozenset[str]
    any: frozenset[str]
    postponed: frozenset[str]
    left: frozenset[str]
    others_mind: frozenset[str]
    going: frozenset[str]
    naming: frozenset[str]
    turning: Phrases
    firm: frozenset[str]
    small: frozenset[str]
    later: frozenset[str]
    substances: frozenset[str]
    plan: Templates
    drop: Templates
    mind: Templates
    again: Templates
    gauges: frozenset[str]
    """By their roots."""
    measuring: frozenset[str]
    noting: frozenset[str]
    leads: frozenset[str]
    held: Phrases
    as_before: frozenset[str]
    judging: Templates
    bounding: frozenset[str]
    sides: dict[str, frozenset[str]]
    """To each side those that are named in its place."""
    cries: Phrases
    sound: frozenset[str]
    behind_side: frozenset[str]


@cache
def plain_words() -> PlainWords:
    """Read once, at the first narration."""
    data = tomllib.loads((files("extract") / "data" / "plain_takebacks.toml").read_text(encoding="utf-8"))
    denials, plans, naming = data["denials"], data["plans"], data["naming"]
    sides = data["sides"]
    data["classes"]["judged"] = data["judged"]["words"]
    templates = {name: Templates(rows, data["classes"]) for name, rows in data["templates"].items()}
    return PlainWords(
        denials=Phrases(_denials(denials)),
        own=frozenset(denials["own"]),
        softening=Phrases(denials["softening"]),
        free=frozenset(denials["free"]),
        asking=frozenset(denials["asking"]),
        supposed=frozenset(denials["supposed"]),
        no_verbs=frozenset(plans["empty"]),
        any=frozenset(plans["any"]),
        postponed=frozenset(plans["postponed"]),
        left=frozenset(plans["left"]),
        others_mind=frozenset(data["mind"]["others"]),
        going=frozenset(data["mind"]["going"]),
        naming=frozenset(naming["is"]),
        turning=Phrases(naming["turning"]),
        firm=frozenset(naming["firm"]),
        small=frozenset(naming["small"]),
        later=frozenset(naming["later"]),
        substances=frozenset(data["substances"]["words"]),
        gauges=frozenset(map(root, (*data["classes"]["gauge"], *data["measuring"]["aside"]))),
        measuring=frozenset(data["measuring"]["verbs"]),
        noting=frozenset(data["noting"]["verbs"]),
        leads=frozenset(data["recalls"]["leads"]),
        held=Phrases(data["recalls"]["held"]),
        as_before=frozenset(data["upheld"]["words"]),
        bounding=frozenset(data["judged"]["bounding"]),
        sides={word: frozenset(row) - {word} for row in sides["rows"] for word in row},
        cries=Phrases(sides["cries"]),
        sound=frozenset(sides["sound"]),
        behind_side=frozenset(sides["behind"]),
        **templates,
    )


_LISTS = frozenset({"short", "own", "softening", "free", "asking", "supposed"})


def _denials(part: dict[str, list[str]]) -> list[str]:
    """ "It doesn't", "it's not": every subject with every auxiliary."""
    whole = [f"{who} {denied}" for who, row in part.items() if who not in _LISTS for denied in row]
    return whole + [f"{short} not" for short in part["short"]]
