"""Which unit an ambiguous word means: pounds of mass or of pull, degrees of angle or of heat, "mil" in its meanings."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

from extract.quantities.draft import Draft, Scene
from extract.quantities.phrases import Phrases
from extract.quantities.scale import temperature_scale
from extract.units import unit_data, unit_named


@cache
def _choices() -> tuple[tuple[dict[str, Any], Phrases], ...]:
    return tuple((row, Phrases(row.get("before", ()))) for row in unit_data()["choice"])


def choose(scene: Scene, draft: Draft) -> Draft:
    """The draft with the unit that the words beside it call for."""
    if draft.unit is None:
        return draft
    for words in (scene.around(draft), scene.near(draft, 20)):
        for row, before in _choices():
            if draft.unit.name in row["units"] and _fits(scene, draft, row, before, words):
                name = row["take"][draft.unit.name]
                heat = name == "temperature"
                return replace(draft, unit=temperature_scale(scene, draft) if heat else unit_named(name))
        if draft.unit.name != "degree" or words & _angle_words():
            return draft
    return draft


@cache
def _angle_words() -> frozenset[str]:
    """Words that keep degrees an angle."""
    return frozenset(word for row, _ in _choices() if "degree" in row["units"] for word in row.get("near_not", ()))


def _fits(scene: Scene, draft: Draft, row: dict[str, Any], before: Phrases, words: set[str]) -> bool:
    value = draft.number.value
    if "said" in row and draft.said not in row["said"]:
        return False
    if "near" in row and not words & set(row["near"]):
        return False
    if "near_not" in row and words & set(row["near_not"]):
        return False
    if "above" in row and value <= row["above"]:
        return False
    if ("below" in row and value >= row["below"]) or (row.get("whole") and value.denominator != 1):
        return False
    return "before" not in row or before.before(scene.tape, draft.start) is not None
