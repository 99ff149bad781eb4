"""How much the words beside a bare number speak for its being a measure.

Takes "the right's at 31" and "pad lift's two"; refuses "peen it over, two taps" and "there's 24 of them".
"""

from __future__ import annotations

from extract.quantities.candidate import Reasons, weigh
from extract.quantities.draft import Draft
from extract.quantities.knowledge import knowledge
from extract.quantities.scene import Scene

_LARGE = 100
_SMALL = 2
_WAIT_REACH = 8
_PLACING = ("at", "to", "over", "under", "it", "of")


def evidence_for(scene: Scene, draft: Draft) -> Reasons:
    """What stands before and behind, and the number's own form: fractions and decimals are nearly always measures."""
    found = _before(scene, draft) | _after(scene, draft)
    number = draft.number
    found["range"] = float(number.low is not None)
    found["side"] = float(draft.start in scene.sides)
    found["large"] = float(number.value >= _LARGE)
    if number.form != "integer":
        found["figure"] = 1.0
    elif number.value < 0:
        found["negative"] = 1.0
    elif number.value <= _SMALL:
        found["small"] = 1.0
    return found


def lasts(scene: Scene, draft: Draft) -> bool:
    """ "for about six" and "leave that 20 before you string up": how long, though no unit says so."""
    evidence, at = knowledge().evidence, draft.start
    if draft.number.form != "integer" or scene.tag(draft.end).startswith(("NN", "JJ")):
        return False
    if scene.near(draft, 5) & knowledge().money:
        return False
    waits = evidence.lasting_near & set(scene.left(at, _WAIT_REACH))
    if waits and draft.number.value > 1 and evidence.lasting_ends.at(scene.tape, draft.end) is not None:
        return scene.tape.text(at - 1) not in ("to", "at", "by", "of")
    while scene.tape.text(at - 1) in evidence.skip and scene.tape.text(at - 1) not in _PLACING:
        at -= 1
    if evidence.lasting.before(scene.tape, at) is not None:
        return evidence.not_lasting.before(scene.tape, at) is None
    ends = scene.ends_clause(draft.end) or scene.tape.text(draft.end) in evidence.lasting_then
    return ends and any(evidence.lasting_verbs.before(scene.tape, place) is not None for place in (at, draft.start))


def _before(scene: Scene, draft: Draft) -> Reasons:
    """The heaviest phrase before, small words skipped."""
    evidence, at = knowledge().evidence, draft.start
    found: set[str] = set()
    for _ in range(4):
        found |= {name for name, phrases in evidence.before.items() if phrases.before(scene.tape, at) is not None}
        if scene.tape.text(at - 1) not in evidence.skip or scene.tape.text(at - 1) == "":
            break
        at -= 1
    heaviest = max(found, key=lambda name: weigh({f"before_{name}": 1.0}), default=None)
    return {f"before_{heaviest}": 1.0} if heaviest else {}


def _after(scene: Scene, draft: Draft) -> Reasons:
    tape, at = scene.tape, draft.end
    for name, phrases in knowledge().evidence.after.items():
        if phrases.at(tape, at) is not None:
            return {f"after_{name}": 1.0}
    if at >= len(tape) or tape.lexemes[at].breath:
        return {"cue_end": 1.0}
    if tape.is_stop(at):
        alone = tape.is_stop(draft.start - 1) or tape.lexemes[draft.start].breath
        return {"clause_end": 1.0, "alone": float(alone)}
    if tape.text(at) == "times" or draft.number.form != "integer":
        return {}
    adjective = scene.tag(at).startswith("JJ") and scene.tag(at + 1).startswith("NN")
    return {"noun_behind": float(adjective or scene.tag(at) in ("NN", "NNS", "NNP", "NNPS", "CD"))}
