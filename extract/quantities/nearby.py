"""What is spoken of beside a bare number, and how well a unit suits it."""

from __future__ import annotations

from fractions import Fraction

from extract.quantities.candidate import Reasons
from extract.quantities.draft import Draft
from extract.quantities.scene import Scene
from extract.quantities.topics import Hit
from extract.spans import Unit
from extract.units import UnitError, system_of, to_unit

_ROLE_WEIGHT = {"adjective": 3.0, "name": 2.5, "word": 2.0, "verb": 1.3}
_PER_WORD = 0.12
"""How much a topic loses for each word between it and the number."""
_OTHER_SENTENCE = 1.0
_BEHIND_OTHER_NUMBER = 0.6
_BAND_NEEDS = 1.2
_MANY = 1000
_HEADING_REACH = 24

_ROUGH = ("pitch", "ratio", "angle", "rotation")
"""Kinds that nobody gives to two decimals."""

Weighed = tuple[float, Hit]


def topics_near(scene: Scene, draft: Draft) -> list[Weighed]:
    """What is spoken of beside the number, each with a weight that falls with distance and over a sentence's border.

    Words right before another number are that number's: the "rated at" of "47, rated at 500 volts".
    """
    found = []
    for hit in scene.topics.between(draft.start - 14, draft.end + 8):
        if hit.topic.role == "unit" or (hit.start >= draft.start and hit.end <= draft.end):
            continue
        away = draft.start - hit.end if hit.end <= draft.start else hit.start - draft.end
        if hit.topic.role == "adjective" and not 0 <= hit.start - draft.end <= 1:
            continue
        if hit.start >= draft.end and scene.number_at(draft.end, hit.end + 2):
            continue
        weight = _ROLE_WEIGHT[hit.topic.role] - _PER_WORD * max(away, 0)
        if scene.sentence(hit.start) != scene.sentence(draft.start):
            weight -= _OTHER_SENTENCE
        if hit.end <= draft.start and scene.number_at(hit.end, draft.start):
            weight *= _BEHIND_OTHER_NUMBER
        if weight > 0:
            found.append((weight, hit))
    return found


def suits(scene: Scene, draft: Draft, unit: Unit, hits: list[Weighed]) -> Reasons:
    """How well a unit suits what is spoken of and the number's form."""
    number, below = draft.number, draft.number.denominator or 1
    found = {
        "bare_turn": float(unit.kind == "rotation"),
        "bare_time": float(unit.kind == "time"),
        "bare_ratio": float(unit.kind == "ratio"),
        "fine_metric": float(below > 4 and below % 5 != 0 and system_of(unit) == "metric"),
        "quarter_metric": float(below == 4 and system_of(unit) == "metric"),
        "places_inch": float(number.decimals in (1, 2) and unit.name == "inch"),
        "places_thou": float(bool(number.decimals) and unit.name == "thou"),
        "places_angle": float(bool(number.decimals) and unit.kind in _ROUGH),
        "side_other": float(draft.start in scene.sides and unit.kind != "length"),
        "many_thou": float(number.value >= _MANY and unit.name == "thou"),
        "fine_other": float(below >= 8 and below % 5 != 0 and system_of(unit) is None),
        "fine_thou": float(below > 2 and unit.name == "thou"),
        "tenths_other": float(below in (10, 100) and unit.kind != "length"),
        "parts_time": float(below > 1 and below % 5 != 0 and unit.kind in ("time", "ratio")),
        "places_heat": float(bool(number.decimals) and unit.kind == "temperature"),
        "heading": float(_heading(scene, draft) == unit.kind),
        "places_inch_metric": float(number.decimals in (1, 2) and unit.name == "inch") * scene.share_metric,
        "negative_size": float(number.value < 0 and unit.kind in ("length", "mass", "torque", "pressure", "volume")),
    }
    odd = number.decimals is not None and number.decimals >= 2 and unit.kind in _ROUGH
    found["over_precise"] = float(odd)
    for_it = max((weight for weight, hit in hits if hit.topic.kind == unit.kind), default=0.0)
    against = max((weight for weight, hit in hits if hit.topic.kind != unit.kind), default=0.0)
    found["kind_named"] = for_it
    found["other_kind_named"] = 0.0 if for_it else against
    beside = {hit.topic.kind for _, hit in hits if is_beside(scene, draft, hit)}
    found["kind_beside"] = float(unit.kind in beside)
    found["other_kind_beside"] = float(bool(beside) and unit.kind not in beside)
    inside = _in_band(scene, draft, unit, hits)
    if inside is not None:
        found["in_band" if inside else "out_of_band"] = 1.0
    return found


def _heading(scene: Scene, draft: Draft) -> str | None:
    """The kind of a unit that was named without a figure, none standing between: "ohms again. 24.9 top"."""
    hits = [hit for hit in scene.topics.between(draft.start - _HEADING_REACH, draft.start) if hit.topic.role == "unit"]
    if not hits or scene.number_at(hits[-1].end, draft.start):
        return None
    return hits[-1].topic.kind


def is_beside(scene: Scene, draft: Draft, hit: Hit) -> bool:
    """True for what is named right before, and for the "file" of "a five point two file"."""
    return hit.topic.role in ("name", "word") and (scene.governs(hit.end, draft) or hit.start == draft.end)


def _in_band(scene: Scene, draft: Draft, unit: Unit, hits: list[Weighed]) -> bool | None:
    """Whether the figure, in that unit, lies in a band that the trade has for what is named; None without a band."""
    names = {hit.topic.name for weight, hit in hits if weight >= _BAND_NEEDS and hit.topic.kind == unit.kind}
    bands = [band for name in names for band in scene.bands.get(name, ())]
    if not bands:
        return None
    try:
        values = [(to_unit(draft.number.value, unit, band.unit), band) for band in bands]
    except UnitError:
        return None
    return any(Fraction(band.low) <= value <= Fraction(band.high) for value, band in values)
