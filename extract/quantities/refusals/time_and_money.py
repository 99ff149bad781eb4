"""Years, stretches of a life and prices: "since 1938", "150 years old", "30 quid".

Leaves "1600 mm" and "seasoned for three years" alone.
"""

from __future__ import annotations

from extract.quantities.draft import Draft
from extract.quantities.knowledge import knowledge
from extract.quantities.scene import Scene

_TWELVE = ("midnight", "noon", "midday")
_MINUTES = 30
_HOURS = 12
_CLOCK_REACH = 6


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
    if "," in scene.tape.text(draft.start) or know.spinning.before(scene.tape, draft.start) is not None:
        return False
    return draft.grouped or scene.tape.text(draft.start - 1) in know.year_before


def is_past(scene: Scene, draft: Draft) -> bool:
    """ "150 years old", "thirty years I've been at this", "a month ago"; timber seasoned three years is measured."""
    if draft.unit is None or draft.unit.name not in ("year", "month", "week", "day"):
        return False
    if draft.unit.name == "year":
        return not scene.near(draft, 8) & knowledge().seasoned
    return bool((scene.near(draft, 1) | set(scene.left(draft.start, 2))) & knowledge().past)


def is_clock(scene: Scene, draft: Draft) -> bool:
    """ "at a quarter past", "ten to four", "9:30", "they open at seven": a time of day."""
    if draft.unit is not None:
        return False
    return _is_written_clock(scene, draft) or _is_past_hour(scene, draft) or _is_appointment(scene, draft)


def _is_written_clock(scene: Scene, draft: Draft) -> bool:
    tape, end = scene.tape, draft.end
    if tape.text(draft.start - 1) == ":" and tape.lexemes[draft.start].glued:
        return tape.kind(draft.start - 2) == "digits"
    return tape.text(end) == ":" and tape.kind(end + 1) == "digits" and tape.lexemes[end + 1].glued


def _is_past_hour(scene: Scene, draft: Draft) -> bool:
    """The "quarter" and the "six" of "quarter to six", the "ten" of "ten past four"."""
    tape, end = scene.tape, draft.end
    if draft.number.form == "integer" and tape.text(end) in ("past", "to") and tape.text(end + 1) in _TWELVE:
        return True
    part = draft.number.form == "fraction" and tape.kind(end - 1) == "part"
    hour = tape.kind(end + 1) in ("ones", "teens", "digits")
    if tape.text(end) in ("past", "to") and part:
        going_on = tape.text(end) == "past" and tape.kind(end + 1) == "and"
        return scene.ends_clause(end + 1) or hour or going_on
    if tape.text(draft.start - 1) == "past" and tape.kind(draft.start - 2) in ("ones", "teens", "tens", "digits"):
        return draft.number.form == "integer" and draft.number.value <= _HOURS
    if tape.text(draft.start - 1) in ("past", "to") and tape.text(draft.start - 2) in ("quarter", "half"):
        return draft.number.form == "integer" and draft.number.value <= _HOURS
    minutes = draft.number.form == "integer" and draft.number.value < _MINUTES
    return minutes and tape.text(end) == "past" and hour


def _is_appointment(scene: Scene, draft: Draft) -> bool:
    """ "they open at seven", "back on tuesday at half nine"."""
    tape, at = scene.tape, draft.start
    if draft.number.form != "integer" or not 1 <= draft.number.value <= _HOURS:
        return False
    if tape.text(at - 1) == "half":
        at -= 1
    placed = tape.text(at - 1) in ("at", "by", "before", "till", "until", "around", "about")
    words = set(scene.left(at, _CLOCK_REACH)) | set(scene.right(draft.end, 3))
    return placed and bool(words & knowledge().clock)


def is_price(scene: Scene, draft: Draft) -> bool:
    """ "£5", "30 quid", "it cost me 240 pounds"."""
    if scene.tape.text(draft.start - 1) in ("$", "£", "€"):
        return True
    if draft.unit is None:
        return bool(set(scene.left(draft.start, 3)) & knowledge().money)
    coins = draft.said in ("pound", "pounds", "cent", "cents") and not draft.compound
    if coins and scene.tape.text(draft.end) == "of" and scene.tape.is_noun(draft.end + 1):
        return False  # "used two pounds of splint, if you buy it by the kilo"
    return coins and bool(scene.near(draft, 12) & scene.around(draft) & knowledge().money)
