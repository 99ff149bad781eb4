"""The unit of a number that was said without one.

From the nearest measure of the same kind ("52 milliamps, the right's at 31"), from the form of the number (sixteenths are of
an inch), or from the trade's habit for what is measured.
"""

from __future__ import annotations

from dataclasses import replace
from math import log

from extract.quantities.draft import Draft, Scene
from extract.quantities.knowledge import knowledge
from extract.spans import Unit
from extract.units import system_of, unit_named

_REACH = 8


def supply(scene: Scene, draft: Draft, before: list[Draft], after: list[Draft]) -> Draft | None:
    """The draft with a unit supplied, or None where nothing makes the number a measure."""
    number = draft.number
    if number.form in ("fraction", "mixed"):
        unit = _by_form(scene, draft, before)
        return replace(draft, unit=unit) if unit else None
    if not _has_evidence(scene, draft, before):
        return None
    found = _nearest(scene, draft, before, after)
    return replace(draft, unit=found) if found else None


def _by_form(scene: Scene, draft: Draft, before: list[Draft]) -> Unit | None:
    return unit_named("inch")


def _has_evidence(scene: Scene, draft: Draft, before: list[Draft]) -> bool:
    if draft.number.form == "decimal":
        return True
    if scene.tag(draft.end) in ("NN", "NNP", "JJ", "NNS") and scene.tape.text(draft.end) not in (
        "long",
        "wide",
        "thick",
        "deep",
        "tall",
        "high",
        "overall",
        "each",
        "so",
    ):
        return False
    return knowledge().evidence["strong"].before(scene.tape, draft.start) is not None


def _nearest(scene: Scene, draft: Draft, before: list[Draft], after: list[Draft]) -> Unit | None:
    """The unit of the measure that this one most likely goes with."""
    best: tuple[float, Unit] | None = None
    clues = scene.around(draft)
    for rank, other in enumerate(reversed(before[-_REACH:])):
        if other.unit is None:
            continue
        score = _likeness(scene, draft, other, rank, clues)
        if best is None or score > best[0]:
            best = (score, other.unit)
    for rank, other in enumerate(after[:1]):
        if other.unit and scene.sentence(other.start) == scene.sentence(draft.start):
            score = _likeness(scene, draft, other, rank, clues)
            if best is None or score > best[0]:
                best = (score, other.unit)
    return best[1] if best and best[0] > -6 else None


def _likeness(scene: Scene, draft: Draft, other: Draft, rank: int, clues: set[str]) -> float:
    """How well another measure fits: near in time, of like size, of the kind that is spoken of."""
    cues = abs(scene.cue(draft.start) - scene.cue(other.start))
    score = -0.5 * rank - 0.35 * cues
    mine, theirs = abs(float(draft.number.value)), abs(float(other.number.value))
    if mine and theirs:
        score += 4 if mine == theirs else -abs(log(mine / theirs))
    kind = other.unit.kind if other.unit else ""
    if clues & knowledge().kinds.get(kind, frozenset()):
        score += 1.5
    if scene.sentence(other.start) == scene.sentence(draft.start):
        score += 1
    if kind in ("angle", "rotation") or (other.unit and system_of(other.unit) is None and kind == "time"):
        score -= 1
    return score
