"""The unit of a number that was said without one.

From a measure nearby ("52 milliamps, the right's at 31"), from the form of the number (sixteenths are of an inch), from the
trade's habit for what is measured, or from what is at home there (440 is hertz). Each candidate is scored; the best is taken
where it and the words beside the number weigh enough.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import log

from extract.quantities.chains import Link, link
from extract.quantities.draft import Draft, Scene
from extract.quantities.evidence import weigh, weigh_before
from extract.quantities.knowledge import knowledge
from extract.quantities.scale import system_said, temperature_scale
from extract.quantities.topics import Hit
from extract.spans import Unit
from extract.units import system_of, unit_named, unit_rows

_LINK_WEIGHT = {"strong": 3.5, "weak": 1.5, "correction": 3.5}


@dataclass(frozen=True, slots=True)
class Candidate:
    """A unit and how well it suits."""

    unit: Unit
    score: float


@dataclass(frozen=True, slots=True)
class Neighbours:
    """What stands around a bare number."""

    before: list[Draft]
    """Measures so far, units settled."""
    last: Draft | None
    """The number right before, measure or not."""
    after: list[Draft]
    """The numbers that follow."""


def supply(scene: Scene, draft: Draft, near: Neighbours) -> Draft | None:
    """The draft with a unit supplied, or None where nothing makes the number a measure."""
    hits = _topics(scene, draft)
    candidates = [
        *_from_before(scene, draft, near, hits),
        *_from_after(scene, draft, near, hits),
        *_from_form(scene, draft, hits),
        *_from_habit(scene, draft, hits),
        *_from_typical(scene, draft),
    ]
    best = max(candidates, key=lambda one: one.score, default=None)
    weight = weigh(scene, draft)
    if best is not None and weight + best.score >= knowledge().evidence.enough:
        return replace(draft, unit=best.unit)
    return None


def _topics(scene: Scene, draft: Draft) -> list[tuple[float, Hit]]:
    """What is spoken of beside the number, each with a weight that falls with distance, in the same sentence."""
    low, high = scene.sentence_bounds(draft.start)
    found = []
    for hit in scene.topics.between(max(low, draft.start - 14), min(high, draft.end + 8)):
        if hit.start >= draft.start and hit.end <= draft.end:
            continue
        away = draft.start - hit.end if hit.end <= draft.start else hit.start - draft.end
        if hit.topic.role == "adjective" and not 0 <= hit.start - draft.end <= 1:
            continue
        base = 3.0 if hit.topic.role == "adjective" else 2.5 if hit.topic.name else 2.0
        found.append((base - 0.12 * max(away, 0), hit))
    return found


def _kind_fit(kind: str, hits: list[tuple[float, Hit]]) -> float:
    """How well a kind of unit suits what is spoken of: for it, or against it where only other kinds are named."""
    for_it = max((weight for weight, hit in hits if hit.topic.kind == kind), default=0.0)
    against = max((weight for weight, hit in hits if hit.topic.kind != kind), default=0.0)
    return for_it if for_it else -0.6 * against


def _closeness(draft: Draft, other: Draft) -> float:
    mine, theirs = abs(float(draft.number.value)), abs(float(other.number.value))
    if not mine or not theirs:
        return 0.0
    apart = abs(log(mine / theirs))
    if apart < 0.001:
        return 2.5
    if apart < 0.06:
        return 2.0
    if apart < 0.8:
        return 1.2
    return 0.3 if apart < 1.7 else max(-4.0, 1.7 - apart)


def _from_before(scene: Scene, draft: Draft, near: Neighbours, hits: list[tuple[float, Hit]]) -> list[Candidate]:
    evidence = knowledge().evidence
    mine = {hit.topic.name for _, hit in hits if hit.topic.name}
    found = []
    for rank, other in enumerate(reversed(near.before[-evidence.reach_measures :])):
        away = scene.cue(draft.start) - scene.cue(other.start)
        if other.unit is None or away > evidence.reach_cues:
            continue
        score = _closeness(draft, other) + _kind_fit(other.unit.kind, hits) - 0.15 * away - 0.15 * rank
        score += 1.0 if scene.sentence(other.start) == scene.sentence(draft.start) else 0.0
        score += 1.0 if away <= 2 else 0.0
        score += 1.5 if mine & scene.topic_names(other) else 0.0
        score += _unlike(scene, draft, other)
        joined = link(scene, other, draft) if near.last is other else None
        score += _LINK_WEIGHT[joined.strength] if joined else 0.0
        found.append(Candidate(other.unit, score))
    return found


def _unlike(scene: Scene, draft: Draft, other: Draft) -> float:
    """Turns, times and percents are seldom left unnamed; sixteenths are never of a millimetre."""
    unit = other.unit
    penalty = 0.0
    if unit and unit.kind in ("rotation", "time", "ratio"):
        penalty -= 1.0
    below = draft.number.denominator or 1
    if unit and below >= 4 and system_of(unit) == "metric":
        penalty -= 4.0
    if unit and unit.name == "thou" and below > 2:
        penalty -= 4.0
    return penalty


def _from_after(scene: Scene, draft: Draft, near: Neighbours, hits: list[tuple[float, Hit]]) -> list[Candidate]:
    """The unit of a number that follows: "80 or 90 grams", "two no three thou"."""
    before = draft
    for other in near.after[:4]:
        joined: Link | None = link(scene, before, other)
        if joined is None:
            break
        if other.unit is not None:
            score = _LINK_WEIGHT[joined.strength] + _closeness(draft, other) + _kind_fit(other.unit.kind, hits)
            return [Candidate(other.unit, score + 0.5 + _unlike(scene, draft, other))]
        before = other
    return []


def _from_form(scene: Scene, draft: Draft, hits: list[tuple[float, Hit]]) -> list[Candidate]:
    """An inch for sixteenths, and for three decimals where inches are spoken."""
    number = draft.number
    inch = unit_named("inch")
    below = number.denominator or 1
    if number.form in ("fraction", "mixed") and not below & (below - 1):
        score = {2: 0.5, 4: 2.5}.get(below, 4.5)
        if below == 2 and system_said(scene) == "metric":
            score -= 1.0
        return [Candidate(inch, score + max(0.0, _kind_fit("length", hits)))]
    if number.decimals and number.decimals >= 3 and abs(number.value) < 100:
        imperial = scene.said_systems["imperial"] >= scene.said_systems["metric"]
        return [Candidate(inch if imperial else unit_named("millimeter"), 2.0)]
    return []


def _from_habit(scene: Scene, draft: Draft, hits: list[tuple[float, Hit]]) -> list[Candidate]:
    """The unit that the trade takes for granted, or the speaker's, for what is spoken of."""
    found = []
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


def _from_typical(scene: Scene, draft: Draft) -> list[Candidate]:
    """Hertz for 440 where pitch is spoken of."""
    words = scene.around(draft)
    return [
        Candidate(unit_named(row.unit), 3.0)
        for row in knowledge().evidence.typical
        if row.low <= draft.number.value <= row.high and words & row.near
    ]


def unsettled(scene: Scene, draft: Draft) -> bool:
    """True for a bare number that matters as a time or a temperature though nothing settles its unit: "bake it at 200"."""
    if draft.number.form != "integer" or weigh(scene, draft) < 2.0 or weigh_before(scene, draft) < 1.0:
        return False
    kinds = {hit.topic.kind for weight, hit in _topics(scene, draft) if weight > 1.5}
    return bool(kinds & {"time", "temperature"})
