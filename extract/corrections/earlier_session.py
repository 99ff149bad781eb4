"""Something said or done in an earlier session, and taken back.

Takes "in the film of the viola I put parchment under all four strings ... Nonsense. Only under the A" and "last winter
i said motor oil was fine ... no it is not you use mainspring grease"; refuses "last week I used hide glue and it held".
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice

from extract.corrections.plain import plain_words
from extract.corrections.scene import Draft, Scene, alike, differ, kind_of

_CLAIM = 14
"""Words about the naming of an earlier session among which its speaker says what he said or did."""
_REFUTED = 34
"""Words behind the claim among which it is called wrong."""
_WEAKLY = 22
_CLAIMED = 4
"""Words of a claim, "i told you to" at least."""
_HELD = 16
"""Words behind that among which the right figure is said."""
_TEXT = 18
_MAKERS = frozenset({"i", "we"})
_SEEN = frozenset({"saw", "seen", "heard", "remember", "watched", "caught"})
_WITHIN = frozenset({"in", "on", "during", "about", "from", "since", "after", "of", "to"})
_NAMED = 2
"""Words of a sentence that only names what holds instead: "Glycerine."."""
_COMPARED = 3
"""Words behind "not" among which a comparison refuses something else: "not a hair bigger"."""
_NO_DENIAL = frozenset({"again", "that", "more", "less", "longer", "need", "doubt"})
"""Behind "no" and "never" these deny nothing that was told."""
_HELD_BY = frozenset({"it's", "that's", "they're", "it", "only"})
_SHOW = 4
"""Words between "in the" and "film"."""
_REASON = 8
"""Words that tell why what was done is told otherwise."""
_SAME_THING = frozenset({"that", "this", "it", "these", "those", "here", "them"})


def find_retractions(scene: Scene) -> Iterator[Draft]:
    """Each claim of an earlier session that is refuted."""
    for begin, end in find_sessions(scene):
        claim = claim_of(scene, begin, end)
        if claim is None:
            continue
        refuted = min(_refutations(scene, claim), default=None)
        if refuted is not None:
            draft = _draft(scene, claim, *refuted)
            if not _only_resolved(scene, refuted, draft):
                yield draft


def _only_resolved(scene: Scene, refuted: tuple[int, int], draft: Draft) -> bool:
    """ "Took me a week, so never again. Right, here's the new piece": nothing is told instead."""
    said = [piece.text for piece in scene.pieces[refuted[0] : refuted[1]]]
    if said != ["never", "again"] or draft.kept is not None:
        return False
    return not scene.content(range(*draft.withdrawn)) & scene.content(range(*draft.holds))


def _refutations(scene: Scene, claim: int) -> Iterator[tuple[int, int]]:
    """The first of each kind: called wrong, thrown out, weakly denied, or told what came of it."""
    pieces, words = scene.pieces, scene.words
    yield from islice(words.refuting.find(pieces, claim + 1, claim + _REFUTED), 1)
    for templates in (words.own, words.thrown):
        yield from islice(templates.find(scene.line, claim + _CLAIMED, claim + _REFUTED), 1)
    weakly = _weakly_refuted(scene, claim)
    if weakly is not None:
        yield weakly
    yield from islice(_came_of_it(scene, claim), 1)
    yield from islice(_told_anew(scene, claim), 1)


def _came_of_it(scene: Scene, claim: int) -> Iterator[tuple[int, int]]:
    """ "That split three of them. Drill it at 5": something bad came of it, and an instruction follows."""
    pieces = scene.pieces
    for begin, _ in scene.words.consequences.find(pieces, claim + _CLAIMED, claim + _REFUTED):
        last = _clause_end(scene, begin)
        start = _clause_start(scene, begin)
        so = (at for at in range(begin + 1, last) if pieces[at].text == "so")
        for end in (*so, last):
            if end < len(pieces) and start > claim + 2 and _instructs(scene, end):
                yield start, end
                break


def _told_anew(scene: Scene, claim: int) -> Iterator[tuple[int, int]]:
    """ "I used a screwdriver for that. Steel pulls the tuning. Use plastic": the same doing with another thing."""
    pieces = scene.pieces
    end = _clause_end(scene, claim)
    same = {piece.text for piece in pieces[claim:end]} & _SAME_THING
    reason = _clause_end(scene, end) if end < len(pieces) else end
    if not same or claim + 1 >= end or reason >= len(pieces) or reason - end > _REASON:
        return
    said = {piece.text for piece in pieces[end : reason + _SHOW]}
    verb = scene.doc[pieces[claim + 1].start].lemma_.lower()
    if pieces[reason].text == verb and not said & plain_words().as_before and _clause_end(scene, reason) - reason > 1:
        yield end, reason


def _clause_end(scene: Scene, place: int) -> int:
    """Behind the sentence a place is in; without marks, its breath."""
    pieces = scene.pieces
    for at in range(place, min(place + _TEXT, len(pieces) - 1)):
        if pieces[at].ends or (not scene.marked and pieces[at].cue != pieces[at + 1].cue):
            return at + 1
    return len(pieces)


def _clause_start(scene: Scene, place: int) -> int:
    pieces = scene.pieces
    for at in range(place - 1, max(0, place - _TEXT), -1):
        if pieces[at].ends or (not scene.marked and pieces[at].cue != pieces[at + 1].cue):
            return at + 1
    return place


def _instructs(scene: Scene, place: int) -> bool:
    """A verb in its base form, or words that lay down what holds, begin what stands at a place."""
    pieces = scene.pieces
    at = place
    while at < len(pieces) - 1 and pieces[at].text in scene.words.leading:
        at += 1
    held = pieces[at].text in _HELD_BY and at > place and pieces[at - 1].text == "so"
    return held or pieces[at].tag == "VB" or bool(scene.words.laying_down.at(pieces, at))


def find_sessions(scene: Scene) -> Iterator[tuple[int, int]]:
    """Where an earlier session is named: "last winter", "in the film of the viola", "in the radio film"."""
    pieces = scene.pieces
    named = dict(scene.words.earlier.find(pieces, 0, len(pieces)))
    for at, piece in enumerate(pieces[:-1]):
        if piece.measured and kind_of(piece.measured) == "time" and pieces[at + 1].text in ("ago", "back"):
            named.setdefault(at, at + 2)
        if _last_one(scene, at):
            named.setdefault(at, at + 2)
        if piece.text in scene.words.shows or (pieces[at + 1].text in ("i", "we", "where") and _is_one(scene, at)):
            opened = next(
                (k for k in range(at - 1, max(-1, at - _SHOW - 1), -1) if pieces[k].text in _WITHIN),
                None,
            )
            if opened is not None and "this" not in {pieces[k].text for k in range(opened, at)}:
                named.setdefault(opened, at + 1)
    for at, piece in enumerate(pieces[:-2]):
        if pieces[at + 1].text in _MAKERS and (piece.text in scene.words.shows or _is_one(scene, at)):
            opened = next((k for k in range(at - 1, max(-1, at - _SHOW - 1), -1) if pieces[k].text == "that"), None)
            if opened is not None and pieces[at + 2].tag in ("VBD", "VBN"):
                named.setdefault(opened, at + 1)
    yield from sorted(named.items())


def _last_one(scene: Scene, at: int) -> bool:
    """ "Last build I said": whatever was done last, and the speaker's own telling right behind it."""
    pieces = scene.pieces
    if pieces[at].text != "last" or at + 3 >= len(pieces) or (at and pieces[at - 1].text in ("the", "my", "this")):
        return False
    told = pieces[at + 2].text in _MAKERS and pieces[at + 3].text in scene.words.saying
    return told and pieces[at + 1].tag in ("NN", "NNS")


def _is_one(scene: Scene, at: int) -> bool:
    """ "the baritone one", which may have been read as a number."""
    return scene.pieces[at].measured is None and scene.text(at, at + 1).lower() == "one"


def claim_of(scene: Scene, begin: int, end: int) -> int | None:
    """The place of "I said", "I put": before the naming in the same sentence, or behind it."""
    pieces = scene.pieces
    if pieces[begin].text == "i" and begin + 1 < end:
        return begin
    for at in range(end, min(end + _CLAIM, len(pieces))):
        if _is_claim(scene, at):
            return at
        if pieces[at].text == "my" and pieces[at + 1 : at + 2] and pieces[at + 1].measured:
            return at
    for at in range(begin - 1, max(-1, begin - _CLAIM), -1):
        if pieces[at].ends:
            return None
        if _is_claim(scene, at):
            return at
    return None


def _is_claim(scene: Scene, at: int) -> bool:
    pieces = scene.pieces
    if at + 1 >= len(pieces):
        return False
    if pieces[at].text == "me":
        return pieces[at - 1].text in _SEEN and pieces[at + 1].tag in ("VB", "VBG", "VBP")
    if pieces[at].text in ("i've", "i'd", "we've", "we'd"):
        return pieces[at + 1].tag in ("VBN", "VBD") and pieces[at + 1].text in scene.words.claiming
    if pieces[at].text not in ("i", "we"):
        return False
    after = pieces[at + 1] if pieces[at + 1].tag != "RB" or at + 2 >= len(pieces) else pieces[at + 2]
    return after.text in scene.words.claiming or after.tag == "VBD"


def _weakly_refuted(scene: Scene, claim: int) -> tuple[int, int] | None:
    """ "I told you to wet it first / no / ...": what was plainly said needs less to be called wrong."""
    pieces = scene.pieces
    if not any(piece.text in scene.words.saying for piece in pieces[claim + 1 : claim + 3]):
        return None
    for begin, end in scene.words.weak_refuting.find(pieces, claim + _CLAIMED, claim + _WEAKLY):
        behind = pieces[end : end + _COMPARED]
        if any(piece.tag == "JJR" for piece in behind) or (behind and behind[0].text in _NO_DENIAL):
            continue
        opening = begin
        while opening > claim and pieces[opening - 1].text in scene.words.leading and not pieces[opening - 1].mark:
            opening -= 1
        if pieces[opening - 1].mark or pieces[opening - 1].cue != pieces[opening].cue or opening < begin:
            return begin, end
    return None


def _draft(scene: Scene, claim: int, refuted: int, behind: int) -> Draft:
    pieces = scene.pieces
    stated = next((at for at in range(claim, refuted) if pieces[at].measured), None)
    right = _right(scene, stated, behind)
    withdrawn = (claim, min(refuted, claim + _TEXT))
    if right is not None:
        gone = (scene.measured(stated),) if stated is not None else ()
        kept = scene.measured(right)
        return Draft(refuted, right + 1, "earlier_session", withdrawn, (right, right + 1), gone, kept)
    meant = _meant(scene, claim, behind)
    if meant is not None:
        return Draft(refuted, behind + 2, "earlier_session", withdrawn, meant)
    until = _answer_end(scene, behind) if behind < len(pieces) else len(pieces)
    if until - behind < _SHOW and until < len(pieces):
        until = scene.sentence_end(until, _TEXT)
    if scene.marked and until < len(pieces) and (last := scene.sentence_end(until, _TEXT)) - until <= _NAMED:
        until = last
    gone = (scene.measured(stated),) if stated is not None else ()
    return Draft(refuted, until, "earlier_session", withdrawn, (behind, until), gone)


def _meant(scene: Scene, claim: int, behind: int) -> tuple[int, int] | None:
    """ "Now squeeze the spokes. Last build I said skip that ... do it": what was told right before is to be done."""
    pieces = scene.pieces
    if [piece.text for piece in pieces[behind : behind + 2]] not in (["do", "it"], ["do", "that"]):
        return None
    start = _clause_start(scene, claim)
    ended = behind + 2 >= len(pieces) or pieces[behind + 1].mark or pieces[behind + 2].cue != pieces[behind + 1].cue
    return (_clause_start(scene, start - 1), start) if ended and start > 1 else None


def _answer_end(scene: Scene, behind: int) -> int:
    """Behind the sentence that says what holds; without marks its breath, or two where the first is short."""
    if scene.marked:
        return scene.sentence_end(behind, _TEXT)
    until = _clause_end(scene, behind)
    return _clause_end(scene, until) if until - behind < _SHOW and until < len(scene.pieces) else until


def _right(scene: Scene, stated: int | None, behind: int) -> int | None:
    """The figure that holds instead of the one stated."""
    if stated is None:
        return None
    first = scene.measured(stated)
    for at in range(behind, min(behind + _HELD, len(scene.pieces))):
        second = scene.pieces[at].measured
        if second is not None and differ(first, second):
            return at if alike(first, second) else None
    return None
