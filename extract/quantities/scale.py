"""The scale of a temperature that was said without one, and the speaker's system of units."""

from __future__ import annotations

from fractions import Fraction

from extract.quantities.draft import Draft
from extract.quantities.scene import Scene
from extract.spans import Unit
from extract.units import System, system_of, to_unit, unit_data, unit_named


def system_said(scene: Scene) -> System:
    """The system of most units that are said in the narration; imperial where they balance."""
    return "metric" if scene.said_systems["metric"] > scene.said_systems["imperial"] else "imperial"


def temperature_scale(scene: Scene, draft: Draft) -> Unit | None:
    """Fahrenheit or Celsius for a temperature whose scale was not said; None where nothing settles it.

    A scale said elsewhere wins; then the only scale in which the figure lies in a band that the trade has for something
    spoken of beside it. Degrees that are said go by the speaker's other units; "oven at 200" does not.
    """
    rules = unit_data()["temperature"]
    if len(scene.said_scales) == 1:
        return unit_named(next(iter(scene.said_scales)))
    fitting = [name for name in (rules["imperial"], rules["metric"]) if _in_a_band(scene, draft, name)]
    if len(fitting) == 1:
        return unit_named(fitting[0])
    if not fitting and draft.unit is None:
        return None
    celsius = scene.said_systems["metric"] > 0 and scene.says_any(frozenset(rules["celsius_signs"]))
    return unit_named(rules["metric" if celsius else system_said(scene)])


def _in_a_band(scene: Scene, draft: Draft, scale: str) -> bool:
    words = " " + " ".join(scene.left(draft.start, 20) + scene.right(draft.end, 12)) + " "
    for attribute in scene.trade.attributes:
        if attribute.kind != "temperature":
            continue
        for band in attribute.bands:
            if any(f" {item} " in words for item in band.items):
                value = to_unit(draft.number.value, scale, band.unit)
                if Fraction(band.low) <= value <= Fraction(band.high):
                    return True
    return False


def in_any_band(scene: Scene, draft: Draft) -> bool:
    """True where a bare whole number is a usual temperature of something spoken of: hide glue at 140."""
    rules = unit_data()["temperature"]
    whole = draft.number.form == "integer"
    return whole and any(_in_a_band(scene, draft, name) for name in (rules["imperial"], rules["metric"]))


def count_systems(drafts: tuple[Draft, ...]) -> dict[System, int]:
    """How many units of each system are said."""
    found: dict[System, int] = {"metric": 0, "imperial": 0}
    for draft in drafts:
        system = system_of(draft.unit) if draft.unit else None
        if system:
            found[system] += 1
    return found
