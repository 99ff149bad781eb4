"""Years, stretches of a life and prices: "since 1938", "150 years old", "30 quid".

Leaves "1600 mm" and "seasoned for three years" alone.
"""

from __future__ import annotations

from extract.quantities.draft import Draft
from extract.quantities.knowledge import knowledge
from extract.quantities.scene import Scene


def is_year(scene: Scene, draft: Draft) -> bool:
    """ "1938", "nineteen seventy six"; not "1,600" and not "1600 mm"."""
    know = knowledge()
    value = draft.number.value
    if (
        draft.unit
        or draft.number.decimals
        or value.denominator != 1
        or not know.year["from"] <= value <= know.year["to"]
    ):
        return False
    if "," in scene.tape.text(draft.start):
        return False
    return draft.grouped or scene.tape.text(draft.start - 1) in know.year_before


def is_past(scene: Scene, draft: Draft) -> bool:
    """ "150 years old", "thirty years I've been at this", "a month ago"; timber seasoned three years is measured."""
    if draft.unit is None or draft.unit.name not in ("year", "month", "week", "day"):
        return False
    if draft.unit.name == "year":
        return not scene.near(draft, 8) & knowledge().seasoned
    return bool((scene.near(draft, 1) | set(scene.left(draft.start, 2))) & knowledge().past)


def is_price(scene: Scene, draft: Draft) -> bool:
    """ "£5", "30 quid", "it cost me 240 pounds"."""
    if scene.tape.text(draft.start - 1) in ("$", "£", "€"):
        return True
    if draft.unit is None:
        return bool(set(scene.left(draft.start, 3)) & knowledge().money)
    coins = draft.said in ("pound", "pounds", "cent", "cents") and not draft.compound
    return coins and bool(scene.near(draft, 12) & scene.around(draft) & knowledge().money)
