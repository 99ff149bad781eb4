"""The unit that a number's form, the trade's habit or the figure itself calls for.

Sixteenths are of an inch; glue at 140 is in degrees; 440 beside "pitch" is hertz; "a quarter of an inch, which is
6.35" goes on in millimetres.
"""

from __future__ import annotations

from fractions import Fraction

from extract.quantities.candidate import Candidate, Neighbours
from extract.quantities.draft import Draft
from extract.quantities.kin import apart
from extract.quantities.knowledge import knowledge
from extract.quantities.nearby import Weighed, is_beside, suits
from extract.quantities.scale import in_any_band, system_said, temperature_scale
from extract.quantities.scene import Scene
from extract.units import system_of, to_unit, unit_data, unit_named, unit_rows

_DUAL_SLACK = Fraction(15, 1000)
_SAID_SLACK = Fraction(6, 100)
"""A measure said again in the other system is often rounded."""
_DUAL_REACH = 20
_LED_REACH = 9
_LATELY = 6
_GROUPED = 100
"""From here on figures said in groups are thousandths where inches are miked."""
_INCH_MARKS = (32, 64, 128)


def says_inch(scene: Scene, draft: Draft) -> bool:
    """True for "11 64ths" and "nine thirty seconds", which name the inch's own marks; "3/32" and "an eighth" do not."""
    last = scene.tape.lexemes[draft.end - 1]
    return last.kind == "ordinal" and draft.number.denominator in _INCH_MARKS


def from_form(scene: Scene, draft: Draft, hits: list[Weighed]) -> list[Candidate]:
    """An inch for sixteenths, and for three decimals where inches are spoken."""
    number = draft.number
    metric = system_said(scene) == "metric"
    below = number.denominator or 1
    if number.form == "fraction" and below in (10, 100):
        if metric:
            unit = unit_named("millimeter")
            return [Candidate(unit, {"form_tenths": 1.0} | suits(scene, draft, unit, hits))]
        return [Candidate(unit_named("thou"), {"form_tenths": 1.0}, divisor=10)] if below == 10 else []
    if draft.grouped and number.form == "mixed" and number.value >= _GROUPED and not metric:
        return [Candidate(unit_named("thou"), {"form_thou": 1.0})]
    if number.form in ("fraction", "mixed") and not below & (below - 1):
        inch = unit_named("inch")
        name = {2: "form_half", 4: "form_quarter"}.get(below, "form_fine")
        reasons = {name: 1.0, "form_half_metric": float(below == 2 and metric)}
        reasons["form_quarter_metric"] = float(below == 4 and metric and number.form == "mixed")
        return [Candidate(inch, reasons | suits(scene, draft, inch, hits))]
    if draft.grouped and number.form == "integer" and 100 <= number.value < 1000 and not metric:
        unit = unit_named("thou")
        if any(hit.topic.kind == "length" for _, hit in hits):
            return [Candidate(unit, {"form_grouped": 1.0} | suits(scene, draft, unit, hits))]
    if number.decimals and number.decimals >= 3 and abs(number.value) < 100:
        unit = unit_named("millimeter" if metric else "inch")
        return [Candidate(unit, {"form_places": 1.0} | suits(scene, draft, unit, hits))]
    return []


def from_habit(scene: Scene, draft: Draft, hits: list[Weighed]) -> list[Candidate]:
    """The unit that the trade takes for granted, or the speaker's, for what is spoken of."""
    found = []
    scale = temperature_scale(scene, draft)
    if scale and in_any_band(scene, draft):
        found.append(Candidate(scale, {"heat_band": 1.0} | suits(scene, draft, scale, hits)))
    for weight, hit in hits:
        topic = hit.topic
        if topic.kind == "temperature" and scale:
            found.append(Candidate(scale, {"heat": weight} | suits(scene, draft, scale, hits)))
        elif topic.habit and topic.kind != "rotation" and topic.habit in unit_rows():
            unit = unit_named(topic.habit)
            foreign = system_of(unit) not in (None, system_said(scene)) and any(scene.said_systems.values())
            reasons = {"habit": weight, "habit_foreign": float(foreign)}
            found.append(Candidate(unit, reasons | suits(scene, draft, unit, hits)))
    return found


def from_own(scene: Scene, draft: Draft, near: Neighbours, hits: list[Weighed]) -> list[Candidate]:
    """The units that the speaker uses for a kind named right beside: "350 across" where millimetres are said."""
    beside = {
        hit.topic.kind
        for _, hit in hits
        if hit.topic.role == "adjective" or (hit.topic.role != "verb" and scene.governs(hit.end, draft))
    }
    found = []
    for unit in scene.units_said:
        if unit.kind in beside:
            lately = [one for one in near.before if one.unit and one.unit.kind == unit.kind and not one.translated][
                -_LATELY:
            ]
            alike = [one for one in lately if one.unit and one.unit.name == unit.name]
            share = len(alike) / len(lately) if lately else scene.share_of(unit)
            reasons = {"own_unit": share, "own_unlike": min((apart(draft, one) for one in alike), default=0.0)}
            found.append(Candidate(unit, reasons | suits(scene, draft, unit, hits)))
    return found


def from_band(scene: Scene, draft: Draft, hits: list[Weighed]) -> list[Candidate]:
    """The unit in which the figure lies in a band of what is named right beside: "a 650 scale" is in millimetres."""
    names = {hit.topic.name for _, hit in hits if hit.topic.name and is_beside(scene, draft, hit)}
    bands = [band for name in names for band in scene.bands.get(name, ())]
    kinds = {unit_named(band.unit).kind for band in bands}
    found = []
    for name in ("inch", "millimeter", "thou") if kinds == {"length"} else ():
        values = [(to_unit(draft.number.value, name, band.unit), band) for band in bands]
        if any(Fraction(band.low) <= value <= Fraction(band.high) for value, band in values):
            found.append(unit_named(name))
    return [Candidate(unit, {"band": 1.0} | suits(scene, draft, unit, hits)) for unit in found if len(found) == 1]


def from_typical(scene: Scene, draft: Draft) -> list[Candidate]:
    """Hertz for 440 where pitch is spoken of."""
    words = scene.around(draft)
    spun = draft.number.form == "integer" and knowledge().spinning.before(scene.tape, draft.start) is not None
    return [
        Candidate(unit_named(row.unit), {"typical": 1.0})
        for row in knowledge().evidence.typical
        if row.low <= draft.number.value <= row.high and (words & row.near or (row.before and spun))
    ]


def from_dual(scene: Scene, draft: Draft, near: Neighbours) -> list[Candidate]:
    """The other system's unit where the number is the last measure converted: "a quarter of an inch, which is 6.35"."""
    if near.last is None or draft.start - near.last.end > _DUAL_REACH:
        return []
    led = _only_translates(scene, near.last.end, draft.start)
    return [Candidate(unit_named(name), {"dual": 1.0, "dual_led": float(led)}) for name in _duals(draft, near.last)]


def _only_translates(scene: Scene, start: int, end: int) -> bool:
    """True for "93 celsius, that's about ..."."""
    words = knowledge().evidence.translates
    return 0 < end - start <= _LED_REACH and all(scene.tape.text(at) in words for at in range(start, end))


def is_translation(draft: Draft, last: Draft | None, said: bool) -> bool:
    """True for the inches of "sixty four millimetres, that is two and a half inches"."""
    if last is None or last.translated or draft.unit is None or draft.start - last.end > _DUAL_REACH:
        return False
    return draft.unit.name in _duals(draft, last, _SAID_SLACK if said else _DUAL_SLACK)


def _duals(draft: Draft, other: Draft, slack: Fraction = _DUAL_SLACK) -> list[str]:
    """Units in which the number is the other measure again."""
    mine = draft.number.value
    if other.unit is None or other.number.value <= 0 or mine <= 0:
        return []
    names = unit_data()["dual"].get(other.unit.name, ())
    exact = {name: to_unit(other.number.value, other.unit, name) for name in names}
    return [name for name, value in exact.items() if abs(mine - value) <= value * slack]
