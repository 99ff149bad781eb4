"""Counts of things and the pronoun: "nine spindles", "18 in the tray", "three turns of thread", "that one".

Leaves "18 mm" and "the right's at 31" alone.
"""

from __future__ import annotations

from extract.quantities.draft import Draft
from extract.quantities.knowledge import knowledge
from extract.quantities.refusals.names import is_sum
from extract.quantities.scene import Scene

_WOUND_REACH = 5
_MANY = 48
_CUT = ("lengths", "pieces", "strips", "lots")
_MORE_REACH = 10
_PARTS_REACH = 8
_MORE_THEN = ("than", "for", "in", "on", "at", "and", "so", "because", "cos")


def is_pronoun(scene: Scene, draft: Draft) -> bool:
    """The pronoun; "it's under one now" is a figure."""
    lone = draft.unit is None and draft.number.value == 1 and draft.number.low is None
    if not lone or scene.tape.text(draft.start) != "one":
        return False
    return knowledge().bounded_one.before(scene.tape, draft.start) is None or not _ends_there(scene, draft.end)


def _ends_there(scene: Scene, at: int) -> bool:
    return scene.ends_clause(at) or scene.tape.text(at) in knowledge().bounded_then


def is_count(scene: Scene, draft: Draft) -> bool:
    """ "nine spindles", "18 in the tray", "the other two", "there's 24 of them"."""
    if draft.unit or draft.number.form not in ("integer",):
        return False
    if draft.number.value == 0 and draft.number.low is None:
        return True
    know, tape = knowledge(), scene.tape
    if tape.text(draft.start - 1) == "times" and draft.number.low is None and not scene.attributes(draft):
        return True  # "180 an hour, and times 24 that's ..."
    if _is_one_of(scene, draft) or _of_sized(scene, draft) or _tells_how_many(scene, draft):
        return True
    if _is_amount(scene, draft):
        return False
    sized = know.evidence.after["size"].at(tape, draft.end) is not None and tape.lexemes[draft.start].breath
    if know.counted_before.before(tape, draft.start) is not None and not sized:
        return True
    at = draft.end + 1 if tape.kind(draft.end) == "dash" else draft.end
    if know.counted_after.at(tape, at) is not None or tape.text(at) in know.counted_nouns:
        return True
    if know.after["multiple"].at(tape, at) is not None and is_sum(scene, at):
        return False
    return _heads_plural(scene, at)


def _is_amount(scene: Scene, draft: Draft) -> bool:
    """ "twenty of spacers", "four of clear air", and the "two" of "sixty-five millimetres and I give two more"."""
    tape, at = scene.tape, draft.end
    if tape.text(at) == "of" and draft.number.value > 1:
        if {"part", "parts"} & set(scene.left(draft.start, _PARTS_REACH)):
            return False  # "5 parts beeswax, 3 of rosin"
        at += 1 + (scene.tag(at + 1) in ("JJ", "VBG"))
        return scene.tag(at) in ("NN", "NNS") and tape.kind(at) == "word" and not tape.lexemes[at].breath
    if tape.text(at) == "more" and (scene.ends_clause(at + 1) or tape.text(at + 1) in _MORE_THEN):
        before = scene.draft_before(draft)
        if before is not None and before.unit is not None and draft.start - before.end <= _MORE_REACH:
            return True
        said = scene.values_before(draft, 2)
        worked_out = len(said) == 2 and abs(said[0] - said[1]) == draft.number.value
        return worked_out and bool(knowledge().evidence.result & set(scene.left(draft.start, 3)))
    return _is_half_each(scene, draft)


def _is_half_each(scene: Scene, draft: Draft) -> bool:
    """ "80 milliamps for the pair, so 40 a side": a measure just said, shared out."""
    if knowledge().shared_after.at(scene.tape, draft.end) is None:
        return False
    before = scene.draft_before(draft)
    shared = before is not None and before.unit is not None and draft.start - before.end <= _MORE_REACH
    return bool(shared and before and before.number.value == 2 * draft.number.value)


def _is_one_of(scene: Scene, draft: Draft) -> bool:
    """ "one of six", "number three of eight"."""
    tape, at = scene.tape, draft.start
    if tape.text(at - 1) == "of" and scene.tag(at - 2) == "NNS" and scene.ends_number(at - 2):
        return tape.text(at - 2) not in _CUT  # "three rows of four"
    if tape.text(at - 1) == "of" and tape.text(at - 2) == "out" and scene.tag(at - 3) in ("NNS", "CD"):
        return True
    return tape.text(at - 1) == "of" and tape.kind(at - 2) in ("ones", "teens", "digits", "ordinal")


def _tells_how_many(scene: Scene, draft: Draft) -> bool:
    """ "the impression bolts are four", "grate bars, eleven"; "the gaps are four" gives their size."""
    tape, at = scene.tape, draft.start
    said = tape.kind(draft.end - 1) in ("ones", "teens", "tens") and draft.number.low is None
    if not said or draft.start in scene.sides or draft.number.value > _MANY or scene.tag(at - 2) not in ("NNS", "NNPS"):
        return False
    listed = tape.text(at - 1) in (",", ":") and tape.is_stop(draft.end)
    if not listed and tape.text(at - 1) != "are":
        return False
    named = any(hit.end == at - 1 and hit.topic.role == "name" for hit in scene.topics.between(at - 5, at - 1))
    return not named and knowledge().evidence.after["size"].at(tape, draft.end) is None


def _of_sized(scene: Scene, draft: Draft) -> bool:
    """ "two 10 mm dowels", "six half inch screws"."""
    behind = scene.draft_at(draft.end)
    sized = behind is not None and behind.unit is not None and scene.cue(behind.start) == scene.cue(draft.start)
    return sized and behind is not None and scene.tag(behind.end) in ("NNS", "NNPS")


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
    """ "three turns of thread", "0.8 mm wire, eleven turns": how often it goes round, not how far."""
    if draft.unit is None or draft.unit.kind != "rotation" or draft.number.value.denominator != 1:
        return False
    if scene.tape.text(draft.end) == "of" and scene.tape.is_noun(draft.end + 1):
        return True
    return bool(scene.near(draft, _WOUND_REACH) & knowledge().wound)
