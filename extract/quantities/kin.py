"""The unit of a neighbouring measure, lent to a bare number: "52 milliamps, the right's at 31", "80 or 90 grams".

Refuses a neighbour of far other size ("two brackets, 400 mm apart") and one too long ago.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import log

from extract.quantities.chains import Link, link
from extract.quantities.draft import Draft, Scene
from extract.quantities.knowledge import knowledge
from extract.quantities.nearby import Weighed, kind_fit
from extract.spans import Unit
from extract.units import system_of, unit_named


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


def from_before(scene: Scene, draft: Draft, near: Neighbours, hits: list[Weighed]) -> list[Candidate]:
    """The units of the measures so far, each with how well it suits."""
    evidence = knowledge().evidence
    found = []
    for rank, other in enumerate(reversed(near.before)):
        away = scene.cue(draft.start) - scene.cue(other.start)
        same = other.number.value == draft.number.value and abs(other.number.value) >= 20
        if other.unit is None or (not same and (away > evidence.reach_cues or rank > evidence.reach_measures)):
            continue
        score = _closeness(draft, other) + kind_fit(other.unit.kind, hits) + unlike(draft, other.unit)
        score += _kinship(scene, draft, other, evidence.weights)
        score -= 0.0 if same else 0.15 * away + 0.15 * rank
        joined = link(scene, other, draft) if near.last is other else None
        score += evidence.weights["linked_" + joined.strength] if joined else 0.0
        found.append(Candidate(other.unit, score))
    return found


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


def _kinship(scene: Scene, draft: Draft, other: Draft, weights: dict[str, float]) -> float:
    """How close two numbers stand, and whether they are said of the same thing."""
    score = 1.0 if scene.sentence(other.start) == scene.sentence(draft.start) else 0.0
    score += 0.5 if scene.cue(draft.start) - scene.cue(other.start) <= 2 else 0.0
    score += weights["adjacent"] * max(0.0, 1 - (draft.start - other.end) / weights["adjacent_reach"])
    shared = scene.nouns(draft) & scene.nouns(other)
    score += min(weights["most_shared"], weights["shared_noun"] * len(shared))
    if draft.number.value < 0 and other.number.value < 0:
        score += weights["signs"]
    if scene.tape.text(other.start - 1) == "at" and scene.number_at(other.start - 5, other.start - 1):
        score += weights["secondary"]
    return score


def unlike(draft: Draft, unit: Unit) -> float:
    """Turns, times and percents are seldom left unnamed; sixteenths are never of a millimetre."""
    penalty = 0.0
    if unit.kind in ("rotation", "time", "ratio"):
        penalty -= 1.0
    below = draft.number.denominator or 1
    if below >= 4 and system_of(unit) == "metric":
        penalty -= 4.0
    if draft.number.value < 0 and unit.kind in ("length", "mass", "time", "torque", "pressure", "force", "volume"):
        penalty += knowledge().evidence.weights["negative_size"]
    if unit.name == "thou" and below > 2:
        penalty -= 4.0
    return penalty


def from_after(scene: Scene, draft: Draft, near: Neighbours, hits: list[Weighed]) -> list[Candidate]:
    """The unit of a number that follows: "80 or 90 grams", "two no three thou"."""
    before = draft
    for other in near.after[:4]:
        joined: Link | None = link(scene, before, other)
        if joined is None:
            break
        unit = other.unit or _plain_inch(other)
        if unit is not None:
            score = knowledge().evidence.weights["linked_" + joined.strength] + _closeness(draft, other)
            return [Candidate(unit, score + kind_fit(unit.kind, hits) + 0.5 + unlike(draft, unit))]
        before = other
    return []


def _plain_inch(draft: Draft) -> Unit | None:
    """An inch for quarters and finer parts."""
    below = draft.number.denominator or 1
    return unit_named("inch") if below >= 4 and not below & (below - 1) else None
