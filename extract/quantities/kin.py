"""The unit of a neighbouring measure, lent to a bare number: "52 milliamps, the right's at 31", "80 or 90 grams".

Refuses a neighbour of far other size ("two brackets, 400 mm apart") and one too long ago.
"""

from __future__ import annotations

from math import log, log1p

from extract.quantities.candidate import Candidate, Neighbours, Reasons
from extract.quantities.chains import link, taken_back
from extract.quantities.draft import Draft
from extract.quantities.knowledge import knowledge
from extract.quantities.manner import is_difference
from extract.quantities.nearby import Weighed, suits
from extract.quantities.scene import Scene
from extract.spans import Unit
from extract.units import unit_named

_ADJACENT_REACH = 12
_EXACT, _NEAR, _LIKE, _SAME_ORDER = 0.001, 0.06, 0.8, 1.7
"""Natural logarithms of the ratio of two values: equal, within 6 %, within a factor of 2.2, of 5.5."""
_FARTHEST = 4.0
_LOOSE_REACH = 5
_FAR_REACH = 12
_OTHER_KIND = 1.5
_RESULT_REACH, _RESULT_CUES = 6, 3
_COUNTED_PARTS = 8
"""From eighths on, parts are counted aloud; a quarter or a half is a figure of its own."""


def from_before(scene: Scene, draft: Draft, near: Neighbours, hits: list[Weighed]) -> list[Candidate]:
    """The units of the measures so far, each with what speaks for it."""
    evidence = knowledge().evidence
    found = []
    lenders = [*([near.again] if near.again else []), *(one for one in reversed(near.before) if one is not near.again)]
    for rank, other in enumerate(lenders):
        away = scene.cue(draft.start) - scene.cue(other.start)
        again = other is near.again
        if other.unit is None or (not again and away > evidence.reach_cues):
            continue
        suited = suits(scene, draft, other.unit, hits)
        if again and suited["other_kind_named"] > _OTHER_KIND and draft.number.form == "integer":
            continue  # "two hundred rpm", and much later "the oven at two hundred"
        kinship = _kinship(scene, draft, other)
        kinship["decay"] = 0.0 if again else log1p(max(away, 0)) + log1p(rank)
        if near.last is other and (joined := link(scene, other, draft)):
            kinship[f"linked_{joined.strength}"] = 1.0
        elif rank == 0 and away <= 1 and taken_back(scene, draft):
            kinship["linked_correction"] = 1.0
        if _is_worked_out(scene, draft, near, other):
            kinship["worked_out"] = 1.0
        sizes = {} if is_difference(scene, draft) else closeness(draft, other)
        found.append(Candidate(other.unit, kinship | sizes | suited))
        parts = _parts_left_out(scene, draft, other)
        if parts:
            found.append(Candidate(other.unit, kinship | parts, denominator=other.number.denominator))
    return found


def _is_worked_out(scene: Scene, draft: Draft, near: Neighbours, other: Draft) -> bool:
    """True for the "four" of "20 across the front and 16 at the back, so that's four more": their difference or sum."""
    if not near.before or other is not near.before[-1] or other.unit is None:
        return False
    if not knowledge().evidence.result & set(scene.left(draft.start, _RESULT_REACH)):
        return False
    earlier = next((one for one in reversed(near.before[:-1]) if one.unit and one.unit.name == other.unit.name), None)
    if earlier is None or scene.cue(draft.start) - scene.cue(earlier.start) > _RESULT_CUES:
        return False
    one, two = earlier.number.value, other.number.value
    return draft.number.value in (abs(one - two), one + two) and one != two


def closeness(draft: Draft, other: Draft) -> Reasons:
    """How like in size two numbers are."""
    mine, theirs = abs(float(draft.number.value)), abs(float(other.number.value))
    if not mine or not theirs:
        return {}
    ratio = abs(log(mine / theirs))
    for name, most in (("equal", _EXACT), ("near", _NEAR), ("alike", _LIKE), ("same_order", _SAME_ORDER)):
        if ratio < most:
            return {name: 1.0}
    return {"unlike": min(_FARTHEST, ratio - _SAME_ORDER)}


def apart(draft: Draft, other: Draft) -> float:
    """How far the sizes of two numbers lie apart beyond one order, 0 where they do not."""
    return closeness(draft, other).get("unlike", 0.0)


def _kinship(scene: Scene, draft: Draft, other: Draft) -> Reasons:
    """How close two numbers stand, and whether they are said of the same thing."""
    found = {
        "same_sentence": float(scene.sentence(other.start) == scene.sentence(draft.start)),
        "same_breath": float(scene.cue(draft.start) - scene.cue(other.start) <= 2),
        "adjacent": max(0.0, 1 - (draft.start - other.end) / _ADJACENT_REACH),
        "shared_noun": float(min(3, len(scene.nouns(draft) & scene.nouns(other)))),
        "same_attribute": float(bool(scene.attributes(draft) & scene.attributes(other))),
        "same_head": float(bool(scene.head(draft) & scene.head(other))),
        "translated": float(other.translated),
        "signs": float(draft.number.value < 0 and other.number.value < 0),
        "common": scene.share_of(other.unit) if other.unit else 0.0,
        "far_other": float(
            other.unit is not None
            and other.unit.kind != "length"
            and scene.sentence(other.start) != scene.sentence(draft.start)
            and scene.nouns(draft).isdisjoint(scene.nouns(other))
        ),
    }
    if scene.tape.text(other.start - 1) == "at" and scene.number_at(other.start - 5, other.start - 1):
        found["secondary"] = 1.0
    return found


def _parts_left_out(scene: Scene, draft: Draft, other: Draft) -> Reasons:
    """How well a whole number counts the same parts as a fraction just before: "nine sixty-fourths and seven"."""
    below, mine = other.number.denominator or 1, draft.number.value
    above = other.number.value * below
    fine = below >= 16 and other.number.form == "fraction" and scene.tape.lexemes[other.end - 1].kind == "ordinal"
    close = scene.cue(draft.start) - scene.cue(other.start) <= 1 and draft.number.form == "integer"
    if not fine or not close or not 1 < mine < below or draft.number.low is not None or above <= 0:
        return {}
    ratio = abs(log(mine / above))
    return {"parts": 1.5 - ratio} if ratio < 1.5 else {}


def from_after(scene: Scene, draft: Draft, near: Neighbours, hits: list[Weighed]) -> list[Candidate]:
    """The unit of a number that follows: "80 or 90 grams", "two no three thou"."""
    before = draft
    for other in near.after[:4]:
        joined = link(scene, before, other)
        if joined is None:
            gap = other.start - draft.end
            if before is draft and other.unit and gap <= _FAR_REACH:
                reasons = (
                    {"ahead_loose" if gap <= _LOOSE_REACH else "ahead_far": 1.0}
                    | closeness(draft, other)
                    | suits(scene, draft, other.unit, hits)
                )
                return [Candidate(other.unit, reasons)]
            break
        unit = other.unit or _plain_inch(other)
        if unit is not None:
            reasons = {f"linked_{joined.strength}": 1.0, "ahead": 1.0} | suits(scene, draft, unit, hits)
            plain = Candidate(unit, reasons | closeness(draft, other))
            parts = _parts_begun(draft, other) if joined.strength == "correction" else {}
            begun = [Candidate(unit, reasons | parts, denominator=other.number.denominator)] if parts else []
            return [plain, *begun]
        before = other
    return []


def _parts_begun(draft: Draft, other: Draft) -> Reasons:
    """How well a whole number that is put right at once counts the same parts: "three, no, four sixteenths"."""
    below, mine = other.number.denominator or 1, draft.number.value
    counted = other.number.value * below
    fine = below >= _COUNTED_PARTS and other.number.form == "fraction" and counted > 1
    if not fine or draft.number.form != "integer" or not 1 <= mine < below or draft.number.low is not None:
        return {}
    ratio = abs(log(mine / counted))
    return {"parts": 1.5 - ratio} if ratio < 1.5 else {}


def _plain_inch(draft: Draft) -> Unit | None:
    """An inch for quarters and finer parts."""
    below = draft.number.denominator or 1
    return unit_named("inch") if below >= 4 and not below & (below - 1) else None
