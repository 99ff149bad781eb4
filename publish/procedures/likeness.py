"""How like two deeds, or two runs of deeds, are: weighed features, so that rare names tell more than "remove".

Deeds are compared by the weighed Jaccard index (Ružička: the sum of the smaller weights by that of the larger; given in
Deza and Deza, Encyclopedia of Distances, chapter 17), runs by the cosine of their summed features with damped counts
(term weighting after Salton and Buckley 1988, "Term-weighting approaches in automatic text retrieval").
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import log1p, sqrt

from publish.procedures.acts import act_words
from publish.procedures.deeds import Deed

Features = dict[str, float]
"""Weight by feature: "part saddle slot", "act cut", "do cut saddle slot"."""

_PART, _TOKEN, _MATERIAL, _TOOL, _WORD = 1.0, 0.35, 0.4, 0.4, 0.3
_COMMON = 0.25
"""What is left of the weight of a thing that turns up in most procedures."""
_ACT, _LIGHT_ACT, _PAIR, _LIGHT_PAIR = 0.5, 0.1, 1.0, 0.4


@dataclass(frozen=True, slots=True)
class Signature:
    """A deed as it is compared."""

    act: str
    things: Features
    """What it is done to and with."""
    whole: Features
    """The same with the act."""
    objects: frozenset[str]
    """Names of its parts and materials."""


def signature(deed: Deed) -> Signature:
    """A deed as it is compared."""
    objects = frozenset((*deed.things.parts, *deed.things.materials))
    return Signature(deed.act, things_features(deed), deed_features(deed), objects)


def things_features(deed: Deed) -> Features:
    """What a deed is done to and with."""
    common = act_words().common
    found: Features = {}
    for kind, names, weight in (
        ("part", deed.things.parts, _PART),
        ("material", deed.things.materials, _MATERIAL),
        ("tool", deed.things.tools, _TOOL),
        ("word", deed.things.words, _WORD),
    ):
        for name in names:
            share = _COMMON if name in common else 1.0
            found[f"{kind} {name}"] = weight * share
            for token in name.split() if kind == "part" else ():
                found.setdefault(f"token {token}", _TOKEN * (_COMMON if token in common else share))
    return found


def deed_features(deed: Deed) -> Features:
    """The same, with the act, and with each act upon a part."""
    light = deed.act in act_words().light
    common = act_words().common
    found = things_features(deed)
    found[f"act {deed.act}"] = _LIGHT_ACT if light else _ACT
    for name in deed.things.parts:
        share = _COMMON if name in common else 1.0
        found[f"do {deed.act} {name}"] = (_LIGHT_PAIR if light else _PAIR) * share
    return found


def tells(feature: str) -> bool:
    """Whether a feature is worth looking others up by: not "remove" by itself, nor "screw"."""
    kind, _, name = feature.partition(" ")
    words = act_words()
    if kind == "act":
        return name not in words.light
    if kind == "do":
        return name.split(" ", 1)[0] not in words.light
    return name not in words.common


def together(listed: Iterable[Mapping[str, float]]) -> Features:
    """The sum of features."""
    total: Features = {}
    for features in listed:
        for name, weight in features.items():
            total[name] = total.get(name, 0.0) + weight
    return total


def alike(one: Mapping[str, float], other: Mapping[str, float]) -> float:
    """The weighed Jaccard index of two deeds, 0 to 1."""
    shared = sum(min(weight, other[name]) for name, weight in one.items() if name in other)
    whole = sum(one.values()) + sum(other.values()) - shared
    return shared / whole if whole else 0.0


def summed(deeds: Iterable[Mapping[str, float]]) -> Features:
    """The features of a run of deeds, said again counting less and less, to length 1."""
    return to_length_1({name: log1p(weight) for name, weight in together(deeds).items()})


def to_length_1(features: Mapping[str, float]) -> Features:
    """The same direction with length 1; nothing where there is nothing."""
    length = sqrt(sum(weight * weight for weight in features.values()))
    return {name: weight / length for name, weight in features.items()} if length else {}


def cosine(one: Mapping[str, float], other: Mapping[str, float]) -> float:
    """The cosine of two runs of length 1, 0 to 1."""
    small, large = (one, other) if len(one) <= len(other) else (other, one)
    return sum(weight * large[name] for name, weight in small.items() if name in large)
