"""A sentence refused by its own speaker and said again another way.

Takes "The flat face looks to the fingerboard. No. Listen to me. To the tailpiece, the flat face" and "Glue the rail
first. Scratch that, fit it dry first"; refuses "Tock, no. Tick, yes." and a "no" that answers nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.scene import Draft, Scene

_BACK = 20
_AHEAD = 24
_SHARED = 2
_FEWEST = 3
_REFUSING = frozenset({"no", "nope", "wrong", "nonsense", "rubbish"})


def find_refused(scene: Scene) -> Iterator[Draft]:
    """Each refusal that stands between two sentences about the same thing."""
    yield from _alone(scene)
    yield from _plainly(scene)


def _alone(scene: Scene) -> Iterator[Draft]:
    pieces = scene.pieces
    for at in range(1, len(pieces) - 1):
        if pieces[at].text not in _REFUSING or not pieces[at].ends or not pieces[at - 1].ends:
            continue
        start = _sentence_start(scene, at - 1)
        before = range(start, at)
        end = at + 1
        while end < min(len(pieces), at + _AHEAD):
            end = scene.sentence_end(end, _AHEAD - (end - at))
            after = range(at + 1, end)
            if any(pieces[k].measured for k in after):
                break
            shared = scene.content(before) & scene.content(after)
            if len(shared) >= _SHARED and scene.content(after) - shared:
                yield Draft(at, end, "this_session", (start, at), (at + 1, end))
                break


def _plainly(scene: Scene) -> Iterator[Draft]:
    """ "Scratch that", "I take that back", "I've got that backwards", at the start of a sentence or a breath."""
    for begin, end in scene.words.refusing.find(scene.pieces, 1, len(scene.pieces)):
        found = _answered(scene, begin, end)
        if found is not None:
            yield found


def _answered(scene: Scene, begin: int, end: int) -> Draft | None:
    """What was said before a refusal that begins a sentence or a breath, and what is said behind it."""
    pieces = scene.pieces
    if pieces[begin].text == "correction" and end < len(pieces) and pieces[end].tag in ("IN", "TO"):
        return None
    opening = begin
    while opening > 1 and not _opens(scene, opening) and pieces[opening - 1].text in scene.words.leading:
        opening -= 1
    if not _opens(scene, opening):
        return None
    start = _sentence_start(scene, opening - 1)
    until = _answer_end(scene, end)
    if until - end < _FEWEST or opening - start < _FEWEST:
        return None
    return Draft(begin, until, "this_session", (start, opening), (end, until))


def _opens(scene: Scene, place: int) -> bool:
    before = scene.pieces[place - 1]
    return bool(before.mark) or before.cue != scene.pieces[place].cue


def _answer_end(scene: Scene, end: int) -> int:
    if end >= len(scene.pieces):
        return end
    until = scene.sentence_end(end, _AHEAD // 2)
    return scene.sentence_end(until, _AHEAD // 2) if until - end < _FEWEST and until < len(scene.pieces) else until


def _sentence_start(scene: Scene, place: int) -> int:
    """Where the sentence that ends at a place begins; without marks, where its breath does."""
    pieces = scene.pieces
    marked = any(piece.mark for piece in pieces[max(0, place - _BACK) : place + 1])
    for at in range(place - 1, max(-1, place - _BACK), -1):
        if pieces[at].ends or (not marked and pieces[at].cue != pieces[place].cue):
            return at + 1
    return max(0, place - _BACK)
