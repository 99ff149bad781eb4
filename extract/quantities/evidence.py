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
_COUNTED_REACH, _MANY, _FACTOR = 16, 50, 4
"""Counts of one breath are of like size."""
_DAYS = frozenset({"today", "tomorrow", "tonight", "yesterday"})
"""Nouns that no number counts where they are set against one another: "2 kilos today, 4 tomorrow"."""
_PLACING = ("at", "to", "over", "under", "it", "of")


def evidence_for(scene: Scene, draft: Draft, counted: Draft | None = None) -> Reasons:
    """What stands before and behind, and the number's own form: fractions and decimals are nearly always measures.

    `counted` is the number right before, where it is no measure: "seven this way, four that way".
    """
    found = _before(scene, draft) | _after(scene, draft)
    number = draft.number
    if counted is not None and _counts_on(draft, counted):
        found["behind_count"] = 1 - (draft.start - counted.end) / _COUNTED_REACH
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


def _counts_on(draft: Draft, counted: Draft) -> bool:
    """True for the "four" of "seven this way, four that way", not for the "48" of "three gaps, so 48"."""
    mine, theirs = draft.number.value, counted.number.value
    whole = draft.number.form == "integer" and draft.number.low is None and min(mine, theirs) > 0
    alike = max(mine, theirs) <= _MANY and max(mine, theirs) <= _FACTOR * min(mine, theirs)
    return whole and alike and draft.start - counted.end <= _COUNTED_REACH


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
    if tape.text(at) in _DAYS and _DAYS & set(scene.left(draft.start, 3)):
        return {}
    adjective = scene.tag(at).startswith("JJ") and scene.tag(at + 1).startswith("NN")
    if any(hit.start == at and hit.topic.role == "name" for hit in scene.topics.between(at, at + 1)):
        return {"measured_behind": 1.0}
    return {"noun_behind": float(adjective or scene.tag(at) in ("NN", "NNS", "NNP", "NNPS", "CD"))}
