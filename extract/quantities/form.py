"""The unit that a number's form, the trade's habit or the figure itself calls for.

Sixteenths are of an inch; glue at 140 is in degrees; 440 beside "pitch" is hertz; "a quarter of an inch, which is
6.35" goes on in millimetres.
"""

from __future__ import annotations

from fractions import Fraction

from extract.quantities.draft import Draft, Scene
from extract.quantities.kin import Candidate, Neighbours
from extract.quantities.knowledge import knowledge
from extract.quantities.nearby import Weighed, kind_fit
from extract.quantities.scale import in_any_band, system_said, temperature_scale
from extract.spans import Unit
from extract.units import system_of, to_unit, unit_data, unit_named, unit_rows

_DUAL_SLACK = Fraction(15, 1000)


def says_inch(scene: Scene, draft: Draft) -> bool:
    """True for "11 64ths" and "nine thirty seconds", which name the inch's own marks; "3/32" and "an eighth" do not."""
    last = scene.tape.lexemes[draft.end - 1]
    return last.kind == "ordinal" and (draft.number.denominator or 1) >= 32


def from_form(scene: Scene, draft: Draft, hits: list[Weighed]) -> list[Candidate]:
    """An inch for sixteenths, and for three decimals where inches are spoken."""
    number = draft.number
    inch = unit_named("inch")
    below = number.denominator or 1
    if number.form in ("fraction", "mixed") and not below & (below - 1):
        score = {2: 0.5, 4: 2.5}.get(below, 4.5)
        if below == 2 and system_said(scene) == "metric":
            score -= 1.0
        return [Candidate(inch, score + max(0.0, kind_fit("length", hits)))]
    if number.decimals and number.decimals >= 3 and abs(number.value) < 100:
        imperial = scene.said_systems["imperial"] >= scene.said_systems["metric"]
        return [Candidate(inch if imperial else unit_named("millimeter"), 2.0)]
    return []


def from_habit(scene: Scene, draft: Draft, hits: list[Weighed]) -> list[Candidate]:
    """The unit that the trade takes for granted, or the speaker's, for what is spoken of."""
    found = []
    if in_any_band(scene, draft):
        found.append(Candidate(temperature_scale(scene, draft), knowledge().evidence.weights["band"]))
    for weight, hit in hits:
        topic = hit.topic
        if topic.kind == "temperature":
            found.append(Candidate(temperature_scale(scene, draft), weight))
        elif topic.habit and topic.kind != "rotation" and topic.habit in unit_rows():
            unit = unit_named(topic.habit)
            foreign = system_of(unit) not in (None, system_said(scene)) and any(scene.said_systems.values())
            found.append(Candidate(unit, weight - 0.5 - (1.5 if foreign else 0.0) + _form_fit(draft, unit)))
    return found


def _form_fit(draft: Draft, unit: Unit) -> float:
    """Whole numbers are seldom inches where thousandths are, and fractions never millimetres."""
    below = draft.number.denominator or 1
    if below >= 4 and (system_of(unit) == "metric" or unit.name == "thou"):
        return -4.0
    return 0.0


def from_typical(scene: Scene, draft: Draft) -> list[Candidate]:
    """Hertz for 440 where pitch is spoken of."""
    words = scene.around(draft)
    return [
        Candidate(unit_named(row.unit), knowledge().evidence.weights["typical"])
        for row in knowledge().evidence.typical
        if row.low <= draft.number.value <= row.high and words & row.near
    ]


def from_dual(draft: Draft, near: Neighbours) -> list[Candidate]:
    """The other system's unit where the number is the last measure converted: "a quarter of an inch, which is 6.35"."""
    mine, other = draft.number.value, near.last
    if other is None or other.unit is None or other.number.value <= 0 or mine <= 0 or draft.start - other.end > 8:
        return []
    found = []
    for name in unit_data()["dual"].get(other.unit.name, ()):
        exact = to_unit(other.number.value, other.unit, name)
        if abs(mine - exact) <= exact * _DUAL_SLACK:
            found.append(Candidate(unit_named(name), knowledge().evidence.weights["dual"]))
    return found
