"""How much the words beside a bare number speak for its being a measure.

Takes "the right's at 31" and "pad lift's two"; refuses "peen it over, two taps" and "there's 24 of them".
"""

from __future__ import annotations

from extract.quantities.draft import Draft, Scene
from extract.quantities.knowledge import knowledge

_NOUN_PENALTY = -4.0
_FIGURE_BONUS = 4.0
_SMALL_PENALTY = -1.0


def weigh(scene: Scene, draft: Draft) -> float:
    """The weights of what stands before and behind, added up. Fractions and decimals are nearly always measures."""
    total = weigh_before(scene, draft) + _after(scene, draft)
    if draft.number.form != "integer":
        total += _FIGURE_BONUS
    elif abs(draft.number.value) <= 2:
        total += _SMALL_PENALTY
    return total


def weigh_before(scene: Scene, draft: Draft) -> float:
    """The weight of the nearest phrase before, small words skipped; the heaviest where several end there."""
    evidence, at = knowledge().evidence, draft.start
    best = 0.0
    for _ in range(4):
        here = (row.weight for row in evidence.before if row.phrases.before(scene.tape, at) is not None)
        best = max(best, max(here, default=0.0))
        if scene.tape.text(at - 1) not in evidence.skip or scene.tape.text(at - 1) == "":
            break
        at -= 1
    return best


def _after(scene: Scene, draft: Draft) -> float:
    at = draft.end
    for row in knowledge().evidence.after:
        if row.phrases.at(scene.tape, at) is not None:
            return row.weight
    if at >= len(scene.tape) or scene.cue(at) != scene.cue(draft.end - 1):
        return 0.5
    if draft.number.form == "integer" and scene.tag(at) in ("NN", "NNS", "NNP", "NNPS", "CD"):
        return _NOUN_PENALTY
    if draft.number.form == "integer" and scene.tag(at).startswith("JJ") and scene.tag(at + 1).startswith("NN"):
        return _NOUN_PENALTY
    return 0.0
