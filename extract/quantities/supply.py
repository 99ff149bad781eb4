"""The unit of a number that was said without one.

From a measure nearby, from the form of the number, from the trade's habit for what is measured, or from what is at
home there. Each candidate is scored; the best is taken where it and the words beside the number weigh enough.
"""

from __future__ import annotations

from dataclasses import replace

from extract.quantities.candidate import Candidate, Neighbours, weigh
from extract.quantities.draft import Draft
from extract.quantities.evidence import evidence_for, lasts
from extract.quantities.form import from_band, from_dual, from_form, from_habit, from_own, from_typical
from extract.quantities.kin import from_after, from_before
from extract.quantities.knowledge import knowledge
from extract.quantities.nearby import topics_near
from extract.quantities.scene import Scene
from extract.spans import Number

_SURE, _NAMED = 2.0, 1.5
_TORQUE = "torque"
_FEWEST = 3
"""Fewer of what an instrument shows, or of a stuff, may be counted."""


def supply(scene: Scene, draft: Draft, near: Neighbours) -> Draft | None:
    """The draft with a unit supplied, or None where nothing makes the number a measure."""
    candidates = candidates_for(scene, draft, near)
    if _set_kind(scene, draft) == _TORQUE:
        candidates = [one for one in candidates if one.unit.kind == _TORQUE]
    best = max(candidates, key=lambda one: one.score, default=None)
    weight = weigh(evidence_for(scene, draft, near.counted))
    if best is not None and weight + best.score >= knowledge().evidence.enough:
        return replace(draft, unit=best.unit, number=in_parts(draft.number, best))
    return None


def candidates_for(scene: Scene, draft: Draft, near: Neighbours) -> list[Candidate]:
    """Every unit that the number may have, from each source."""
    hits = topics_near(scene, draft)
    candidates = [
        *from_before(scene, draft, near, hits),
        *from_after(scene, draft, near, hits),
        *from_form(scene, draft, hits),
        *from_habit(scene, draft, hits),
        *from_own(scene, draft, near, hits),
        *from_band(scene, draft, hits),
        *from_typical(scene, draft),
        *from_dual(scene, draft, near),
        *_from_setting(scene, draft),
    ]
    if lasts(scene, draft):
        return [one for one in candidates if one.unit.kind == "time"]
    set_to = _set_kind(scene, draft)
    if set_to == "torque" and draft.number.form == "integer":
        return [one for one in candidates if one.unit.kind == set_to]
    return candidates


def in_parts(number: Number, best: Candidate) -> Number:
    """The number as so many parts, where parts were left out: seven of sixty-fourths."""
    if best.denominator:
        return replace(number, value=number.value / best.denominator, form="fraction", denominator=best.denominator)
    if best.divisor != 1:
        value = number.value * number.denominator / best.divisor if number.denominator else number.value
        return replace(number, value=value)
    return number


def _set_kind(scene: Scene, draft: Draft) -> str | None:
    """Torque for "tighten the head bolts to 35 in a cross pattern"; refuses "tighten to 12 o'clock"."""
    evidence, at = knowledge().evidence, draft.start
    if evidence.wrenched.at(scene.tape, draft.end) is not None:
        return "torque"
    if draft.number.form in ("fraction", "mixed"):
        return None  # nothing that is set to a bare figure goes by fractions but a length
    if not scene.ends_clause(draft.end) and scene.tape.text(draft.end) not in evidence.unsettled_then:
        return None
    if evidence.after["count"].at(scene.tape, draft.end) is not None:
        return None
    words = scene.left(at, evidence.unsettled_within)
    while words and words[-1] in evidence.unsettled_about:
        words.pop()
    rows = evidence.unsettled
    return next((kind for kind, verbs, small in rows if words and words[-1] in small and verbs & {*words[:-1]}), None)


def _read_kind(scene: Scene, draft: Draft) -> str | None:
    """Torque for "forty on the wrench": the instrument on which a bare figure is read; refuses "two on the scale"."""
    if draft.number.form == "integer" and draft.number.value < _FEWEST:
        return None
    read = knowledge().evidence.unsettled_read
    return next((kind for kind, phrases in read.items() if phrases.at(scene.tape, draft.end) is not None), None)


def _is_amount(scene: Scene, draft: Draft) -> bool:
    """ "Two hundred of shellac": so much of what isn't counted; refuses "four of resin to one of hardener"."""
    evidence, tape = knowledge().evidence, scene.tape
    if draft.number.value < _FEWEST or tape.text(draft.end) != "of" or scene.near(draft, 6) & evidence.unsettled_parts:
        return False
    return tape.text(draft.end + 1) in evidence.unsettled_of and not scene.tag(draft.end + 2).startswith("NN")


def _from_setting(scene: Scene, draft: Draft) -> list[Candidate]:
    """The units that the speaker has for what a figure is set to: newton metres for "the stem bolts to six"."""
    kind = _set_kind(scene, draft)
    return [Candidate(unit, {"set_to": 1.0}) for unit in scene.units_said if unit.kind == kind]


def unsettled(scene: Scene, draft: Draft) -> bool:
    """True for a bare number that matters though nothing settles its unit: "bake it at 200", "leave it for six"."""
    if lasts(scene, draft) or _is_amount(scene, draft):
        return True
    kind = _set_kind(scene, draft) or _read_kind(scene, draft)
    if kind is not None and not (kind == "length" and any(unit.kind == kind for unit in scene.units_said)):
        return True
    hits = topics_near(scene, draft)
    if draft.number.form == "integer" and any(
        hit.topic.kind == "torque" and scene.governs(hit.end, draft) for _, hit in hits
    ):
        return True
    reasons = evidence_for(scene, draft)
    if draft.number.form != "integer" or weigh(reasons) < _SURE or not any(one.startswith("before") for one in reasons):
        return False
    kinds = {hit.topic.kind for weight, hit in hits if weight > _NAMED}
    return bool(kinds & {"time", "temperature"})
