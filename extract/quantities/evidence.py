"""How much the words beside a bare number speak for its being a measure.

Takes "the right's at 31" and "pad lift's two"; refuses "peen it over, two taps" and "there's 24 of them".
"""

from __future__ import annotations

from extract.quantities.draft import Draft, Scene
from extract.quantities.knowledge import knowledge


def weigh(scene: Scene, draft: Draft) -> float:
    """The weights of what stands before and behind, added up. Fractions and decimals are nearly always measures."""
    weights = knowledge().evidence.weights
    total = weigh_before(scene, draft) + _after(scene, draft, weights)
    if draft.number.low is not None:
        total += weights["range"]
    if draft.number.value >= 100:
        total += weights["large"]
    if draft.number.form != "integer":
        total += weights["figure"]
    elif draft.number.value < 0:
        total += weights["negative"]
    elif draft.number.value <= 2:
        total += weights["small"]
    return total


def lasts(scene: Scene, draft: Draft) -> bool:
    """ "for about six": how long, though no unit says so."""
    evidence, at = knowledge().evidence, draft.start
    while scene.tape.text(at - 1) in evidence.skip and scene.tape.text(at - 1) not in ("at", "to", "over", "under"):
        at -= 1
    return (
        draft.number.form == "integer"
        and evidence.lasting.before(scene.tape, at) is not None
        and evidence.not_lasting.before(scene.tape, at) is None
        and not scene.tag(draft.end).startswith(("NN", "JJ"))
    )


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


def _after(scene: Scene, draft: Draft, weights: dict[str, float]) -> float:
    at = draft.end
    for row in knowledge().evidence.after:
        if row.phrases.at(scene.tape, at) is not None:
            return row.weight
    if at >= len(scene.tape) or scene.cue(at) != scene.cue(draft.end - 1):
        return weights["cue_end"]
    if scene.tape.kind(at) == "mark":
        first = scene.tape.kind(draft.start - 1) == "mark" or scene.tape.lexemes[draft.start].breath
        return weights["clause_end"] + (weights["alone"] if first else 0.0)
    if scene.tape.text(at) == "times":
        return 0.0
    if draft.number.form == "integer" and scene.tag(at) in ("NN", "NNS", "NNP", "NNPS", "CD"):
        return weights["noun"]
    if draft.number.form == "integer" and scene.tag(at).startswith("JJ") and scene.tag(at + 1).startswith("NN"):
        return weights["noun"]
    return 0.0
