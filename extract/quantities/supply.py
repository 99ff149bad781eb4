"""The unit of a number that was said without one.

From a measure nearby, from the form of the number, from the trade's habit for what is measured, or from what is at
home there. Each candidate is scored; the best is taken where it and the words beside the number weigh enough.
"""

from __future__ import annotations

from dataclasses import replace

from extract.quantities.draft import Draft, Scene
from extract.quantities.evidence import lasts, weigh, weigh_before
from extract.quantities.form import from_dual, from_form, from_habit, from_typical
from extract.quantities.kin import Neighbours, from_after, from_before
from extract.quantities.knowledge import knowledge
from extract.quantities.nearby import topics_near


def supply(scene: Scene, draft: Draft, near: Neighbours) -> Draft | None:
    """The draft with a unit supplied, or None where nothing makes the number a measure."""
    hits = topics_near(scene, draft)
    candidates = [
        *from_before(scene, draft, near, hits),
        *from_after(scene, draft, near, hits),
        *from_form(scene, draft, hits),
        *from_habit(scene, draft, hits),
        *from_typical(scene, draft),
        *from_dual(draft, near),
    ]
    if lasts(scene, draft):
        candidates = [one for one in candidates if one.unit.kind == "time"]
    best = max(candidates, key=lambda one: one.score, default=None)
    weight = weigh(scene, draft)
    if best is not None and weight + best.score >= knowledge().evidence.enough:
        return replace(draft, unit=best.unit)
    return None


def unsettled(scene: Scene, draft: Draft) -> bool:
    """True for a bare number that matters though nothing settles its unit: "bake it at 200", "leave it for six"."""
    if lasts(scene, draft):
        return True
    if draft.number.form != "integer" or weigh(scene, draft) < 2.0 or weigh_before(scene, draft) < 1.0:
        return False
    kinds = {hit.topic.kind for weight, hit in topics_near(scene, draft) if weight > 1.5}
    return bool(kinds & {"time", "temperature"})
