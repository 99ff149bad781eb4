"""A statement denied at once by a bare auxiliary, and what holds instead.

Takes "the drive side undoes anticlockwise. No, it doesn't, it's a left-hand thread" and "I'll grease the hub. No, I
won't, it's sealed"; refuses "does it leak? No, it doesn't" and "it doesn't hold, because it's dry".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.openings import opens
from extract.corrections.plain import plain_words
from extract.corrections.scene import Draft, Scene, alike, differ
from extract.corrections.turns import before, behind, is_stated, unit_at
from extract.spans import Measured

_PERSONS = {
    "i": frozenset({"i", "i'm", "i'll", "i'd", "i've"}),
    "we": frozenset({"we", "we're", "we'll", "we'd", "we've", "let's"}),
    "you": frozenset({"you", "you'll", "you'd", "you're", "you've"}),
}
_NO = frozenset({"no", "nope", "nah"})
_LATEST = 4
"""Words from the end of what stands before in which a negation makes the denial an agreement."""


def find_denied(scene: Scene) -> Iterator[Draft]:
    """Each bare denial of the statement before it."""
    words, pieces = plain_words(), scene.pieces
    for begin, end in words.denials.find(pieces, 2, len(pieces) - 1):
        opening = begin
        while opening > 0 and pieces[opening - 1].text in _NO and pieces[opening - 1].cue == pieces[begin].cue:
            opening -= 1
        free = _freed(scene, end, said_no=opening < begin)
        claim = before(scene, opening)
        if free is None or claim is None or not (opening < begin or _anew(scene, opening)):
            continue
        answer = behind(scene, free)
        if answer is None or not _fits(scene, claim, begin) or not is_stated(scene, claim):
            continue
        if scene.content(range(*answer)) - scene.content(range(*claim)) or _figure(scene, answer):
            yield _draft(scene, opening, claim, answer)


def _freed(scene: Scene, end: int, said_no: bool) -> int | None:
    """Behind the denial and what softens it, where nothing more is denied: a mark, a breath, or a new clause."""
    words, pieces = plain_words(), scene.pieces
    closed = opens(scene, end)
    while end < len(pieces) and (length := words.softening.at(pieces, end)):
        end += length
        closed = True
    if end >= len(pieces):
        return None
    follows = said_no and pieces[end].text in words.free
    return end if closed or follows else None


def _anew(scene: Scene, place: int) -> bool:
    """A sentence begins at a place; without marks, a breath."""
    return unit_at(scene, place)[0] == place


def _fits(scene: Scene, claim: tuple[int, int], begin: int) -> bool:
    """The statement is of the same person: "I'll grease it. No, I won't"."""
    said = {piece.text for piece in scene.pieces[claim[0] : claim[1]]}
    who = scene.pieces[begin].text.split("'")[0]
    if who in _PERSONS:
        return bool(said & _PERSONS[who])
    return not said & (_PERSONS["i"] | _PERSONS["we"]) or _stated_behind(scene, claim)


def _stated_behind(scene: Scene, claim: tuple[int, int]) -> bool:
    """ "I think it's cork": a thing is spoken of behind the speaker's "I"."""
    pieces = scene.pieces
    own = max(at for at in range(*claim) if pieces[at].text in _PERSONS["i"] | _PERSONS["we"])
    return any(pieces[at].text.endswith("'s") or pieces[at].tag == "VBZ" for at in range(own + 1, claim[1]))


def _figure(scene: Scene, span: tuple[int, int]) -> int | None:
    return next((at for at in range(*span) if scene.pieces[at].measured), None)


def _draft(scene: Scene, begin: int, claim: tuple[int, int], answer: tuple[int, int]) -> Draft:
    wrong, right = _figure(scene, claim), _figure(scene, answer)
    if wrong is not None and right is not None:
        first, second = scene.measured(wrong), scene.measured(right)
        if alike(first, second) and differ(first, second):
            return Draft(begin, right + 1, "this_session", (wrong, wrong + 1), (right, right + 1), (first,), second)
    # What is not done after all takes its figures with it; a thing described otherwise keeps its sizes.
    planned = scene.pieces[claim[0]].text in _PERSONS["i"] | _PERSONS["we"]
    gone: tuple[Measured, ...] = tuple(one for at in range(*claim) if planned and (one := scene.pieces[at].measured))
    return Draft(begin, answer[1], "this_session", claim, answer, gone)
