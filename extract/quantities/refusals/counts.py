"""Counts of things and the pronoun: "nine spindles", "18 in the tray", "three turns of thread", "that one".

Leaves "18 mm" and "the right's at 31" alone.
"""

from __future__ import annotations

from extract.quantities.draft import Draft
from extract.quantities.knowledge import knowledge
from extract.quantities.refusals.names import is_sum
from extract.quantities.scene import Scene


def is_pronoun(scene: Scene, draft: Draft) -> bool:
    """The pronoun."""
    return (
        draft.unit is None
        and draft.number.value == 1
        and draft.number.low is None
        and scene.tape.text(draft.start) == "one"
    )


def is_count(scene: Scene, draft: Draft) -> bool:
    """ "nine spindles", "18 in the tray", "the other two", "there's 24 of them"."""
    if draft.unit or draft.number.form not in ("integer",):
        return False
    know, tape = knowledge(), scene.tape
    if know.counted_before.before(tape, draft.start) is not None:
        return True
    at = draft.end + 1 if tape.kind(draft.end) == "dash" else draft.end
    if know.counted_after.at(tape, at) is not None or tape.text(at) in know.counted_nouns:
        return True
    if know.after["multiple"].at(tape, at) is not None and is_sum(scene, at):
        return False
    return _heads_plural(scene, at)


def _heads_plural(scene: Scene, at: int) -> bool:
    """True where a plural noun that no unit is stands within two adjectives or nouns behind."""
    for place in range(at, min(at + 3, len(scene.tape))):
        if scene.tape.lexemes[place].breath:
            return False
        tag = scene.tag(place)
        if tag in ("NNS", "NNPS") or (tag == "VBZ" and place == at and _ends_count(scene, at + 1)):
            return True
        if tag not in ("JJ", "NN", "VBN", "VBG", "NNP", "JJR"):
            return False
    return False


def _ends_count(scene: Scene, at: int) -> bool:
    """True behind the "twists" of "6 twists each", which a tagger may take for a verb."""
    return scene.tape.text(at) in ("each", "per", "apiece") or scene.tape.is_stop(at)


def is_wrap(scene: Scene, draft: Draft) -> bool:
    """ "three turns of thread": how often it goes round, not how far."""
    turns = draft.unit is not None and draft.unit.kind == "rotation"
    return turns and scene.tape.text(draft.end) == "of" and scene.tape.is_noun(draft.end + 1)
