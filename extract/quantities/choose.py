"""Which unit an ambiguous word means: pounds of mass or of pull, degrees of angle or of heat, "mil" in its meanings."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

from extract.quantities.draft import Draft
from extract.quantities.nearby import topics_near
from extract.quantities.phrases import Phrases
from extract.quantities.scale import temperature_scale
from extract.quantities.scene import Scene
from extract.units import unit_data, unit_named

_NAMED = 1.0
_FEW_DEGREES = 12
"""Fewer degrees are of heat only where the sentence itself speaks of it."""


@cache
def _choices() -> tuple[tuple[dict[str, Any], Phrases, Phrases], ...]:
    rows = unit_data()["choice"]
    return tuple((row, Phrases(row.get("before", ())), Phrases(row.get("after", ()))) for row in rows)


def choose(scene: Scene, draft: Draft) -> Draft:
    """The draft with the unit that the words beside it call for."""
    if draft.unit is None:
        return draft
    for words in _circles(scene, draft):
        for row, before, after in _choices():
            if (
                draft.unit.name in row["units"]
                and _fits(scene, draft, row, words)
                and _stands(scene, draft, row, before, after)
            ):
                name = row["take"][draft.unit.name]
                unit = temperature_scale(scene, draft) if name == "temperature" else unit_named(name)
                return replace(draft, unit=unit or draft.unit)
    return draft


def _circles(scene: Scene, draft: Draft) -> list[set[str]]:
    """The words of the sentence; for degrees also those around it, where the sentence speaks of no other kind."""
    near = scene.around(draft)
    if draft.unit is None or draft.unit.name != "degree" or near & _angle_words():
        return [near]
    kinds = {hit.topic.kind for weight, hit in topics_near(scene, draft) if weight > _NAMED}
    if "angle" in kinds and not kinds & {"temperature"}:
        return []
    if draft.number.value < _FEW_DEGREES:
        return [near]
    return [near, scene.near(draft, 20)] if not kinds - {"temperature", "time"} else [near]


@cache
def _angle_words() -> frozenset[str]:
    """Words that keep degrees an angle."""
    return frozenset(word for row, _, _ in _choices() if "degree" in row["units"] for word in row.get("near_not", ()))


def _fits(scene: Scene, draft: Draft, row: dict[str, Any], words: set[str]) -> bool:
    value = draft.number.value
    if "said" in row and draft.said not in row["said"]:
        return False
    if "within" in row:
        words = scene.near(draft, row["within"])
    if "near" in row and not words & set(row["near"]):
        return False
    if "near_not" in row and words & set(row["near_not"]):
        return False
    if "above" in row and value <= row["above"]:
        return False
    too_large = "below" in row and value >= row["below"]
    return not too_large and not (row.get("whole") and value.denominator != 1)


def _stands(scene: Scene, draft: Draft, row: dict[str, Any], before: Phrases, after: Phrases) -> bool:
    """True where the phrases that a choice asks for stand right before and behind."""
    if "before" in row and before.before(scene.tape, draft.start) is None:
        return False
    return "after" not in row or after.at(scene.tape, draft.end) is not None
