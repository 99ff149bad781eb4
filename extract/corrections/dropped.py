"""A plan told before and given up: what was to be done is left.

Takes "the plan is to drill the holes out" and, minutes later, "they cleaned up, so I'm not drilling anything"; refuses
"I'm not going to sand it" where no one planned to, and "I'll strip it next week, I'm not going to strip it today".
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from extract.corrections.plain import plain_words
from extract.corrections.scene import Draft, Scene
from extract.corrections.turns import unit_at

_VERB = 3
"""Words behind "I'm going to" among which the verb stands."""
_CLAUSE, _OBJECT = 12, 5
_PARTICLE = 3
_SHORTEST = 4
"""Words that a verb cut short by its ending has at least in common with its other forms: "drill", "drilling"."""
_VERBS = frozenset({"VB", "VBP", "VBG", "VBN", "NN", "JJ", "VBD", "NNP"})
_LEAVING = frozenset({"leave", "leaving", "keep", "keeping"})
_STAYING = frozenset({"staying", "stays", "stay"})


@dataclass(frozen=True, slots=True)
class _Plan:
    begin: int
    verb: int
    end: int


def find_dropped(scene: Scene) -> Iterator[Draft]:
    """Each plan that is given up later, with the sentence that gives it up."""
    plans = list(_plans(scene))
    if not plans:
        return
    words = plain_words()
    for begin, end in words.drop.find(scene.line, 1, len(scene.pieces)):
        verb = _verb(scene, end)
        plan = _planned(scene, plans, begin, verb) if verb is not None else None
        if plan is not None:
            yield _draft(scene, plan, begin)
    for at, thing in _left(scene):
        plan = next((one for one in reversed(plans) if one.end <= at and thing & _object(scene, one)), None)
        if plan is not None and not _postponed(scene, at):
            yield _draft(scene, plan, at)


def _plans(scene: Scene) -> Iterator[_Plan]:
    words, pieces = plain_words(), scene.pieces
    for begin, end in words.plan.find(scene.line, 0, len(pieces)):
        verb = _verb(scene, end)
        if verb is None and end < len(pieces) and pieces[end].text in ("a", "the", "new"):
            verb = end
        if verb is not None and not any(piece.text in ("not", "never") for piece in pieces[begin:verb]):
            yield _Plan(begin, verb, min(unit_at(scene, verb)[1], verb + _CLAUSE))


def _verb(scene: Scene, place: int) -> int | None:
    """The verb of weight at a place or a word on; "drill the holes", "say glue the block"."""
    words, pieces = plain_words(), scene.pieces
    for at in range(place, min(place + _VERB, len(pieces))):
        if pieces[at].figure or pieces[at].tag not in _VERBS | {"RB", "TO"}:
            return None
        if (
            pieces[at].tag in _VERBS
            and pieces[at].text not in words.no_verbs
            and _lemma(scene, at) not in words.no_verbs
        ):
            return at
        if pieces[at].mark:
            return None
    return None


def _lemma(scene: Scene, at: int) -> str:
    return scene.doc[scene.pieces[at].start].lemma_.lower()


def _same_verb(scene: Scene, one: int, other: int) -> bool:
    """Two forms of one verb, however they were tagged: "plane", "planing"; "drill", "drilling"."""
    if _lemma(scene, one) == _lemma(scene, other):
        return True
    first, second = (_cut(scene.pieces[at].text) for at in (one, other))
    return first == second


def _cut(word: str) -> str:
    """A word without the ending of a verb: "drilling", "drilled" and "drills" are "drill"."""
    for ending in ("ing", "ed", "es", "s", "e"):
        if word.endswith(ending) and len(word) - len(ending) >= _SHORTEST - 1:
            word = word.removesuffix(ending)
            break
    doubled = len(word) >= _SHORTEST and word[-1] == word[-2] and word[-1] not in "ls"
    return word[:-1] if doubled else word


def _object(scene: Scene, plan: _Plan) -> frozenset[str]:
    return scene.content(range(plan.verb + 1, plan.end))


def _planned(scene: Scene, plans: list[_Plan], begin: int, verb: int) -> _Plan | None:
    """The latest plan of the same verb whose object is named again, or may be any."""
    pieces, words = scene.pieces, plain_words()
    if _postponed(scene, begin):
        return None
    end = min(unit_at(scene, verb)[1], verb + 1 + _OBJECT)
    said = scene.content(range(verb + 1, end))
    near = range(verb + 1, min(end, verb + 1 + _VERB))
    vague = verb + 1 >= end or pieces[verb + 1].text in words.any or any(_is_one(scene, at) for at in near)
    for plan in reversed(plans):
        if plan.end <= begin and _same_verb(scene, plan.verb, verb) and (vague or said & _object(scene, plan)):
            return plan
    return None


def _is_one(scene: Scene, at: int) -> bool:
    """ "The back one", which may have been read as a number."""
    return scene.pieces[at].measured is None and scene.text(at, at + 1).lower() == "one"


def _postponed(scene: Scene, at: int) -> bool:
    """ "Not today", "not yet", "no further": the plan stands, or what is left is another part."""
    begin, end = unit_at(scene, at)
    near = scene.pieces[max(begin, at) : min(end, at + _CLAUSE)]
    return any(piece.text in plain_words().postponed for piece in near)


def _left(scene: Scene) -> Iterator[tuple[int, frozenset[str]]]:
    """ "I'm leaving the block alone", "the spokes are staying": where it is said, and of what."""
    words, pieces = plain_words(), scene.pieces
    for at in range(1, len(pieces)):
        if pieces[at].text in _LEAVING and pieces[at - 1].text in ("i'm", "i'll", "we're", "we'll", "just"):
            close = min(at + _OBJECT + 1, len(pieces))
            until = next((k for k in range(at + 2, close) if pieces[k].text in words.left), None)
            if until is not None:
                yield at - 1, scene.content(range(at + 1, until))
        if pieces[at].text in _STAYING and pieces[at - 1].text in ("are", "is", "they're", "it's"):
            begin = max(unit_at(scene, at)[0], at - _PARTICLE)
            yield begin, scene.content(range(begin, at - 1))


def _draft(scene: Scene, plan: _Plan, begin: int) -> Draft:
    end = min(unit_at(scene, begin)[1], begin + _CLAUSE)
    gone = tuple(one for at in range(plan.begin, plan.end) if (one := scene.pieces[at].measured))
    return Draft(begin, end, "this_session", (plan.begin, plan.end), (begin, end), gone)
