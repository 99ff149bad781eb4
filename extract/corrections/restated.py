"""A statement without a figure taken back by a remark of its own.

Takes "It unscrews anticlockwise. I had that back to front. Clockwise" and "strain it until it rings, take no notice of
that, strain it until it stops giving"; refuses "I had the blade in back to front. Turn it round".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.openings import opening_of, opens
from extract.corrections.scene import Draft, Scene

_BACK = 22
_AHEAD = 22
_SHORT = 4
_SENTENCES = 2
_FEWEST = 2
_BARE = frozenset({"no", "nope", "well", "more", "like", "rather", "actually"})
"""Said for many reasons: these alone take no statement back."""
_ADVISING = frozenset({"but", "to", "you", "always"})
"""Behind one of these the viewer is told to: "but check that"."""
_HEADS = frozenset({"NN", "NNS", "NNP", "NNPS", "JJ", "RB", "VB", "VBP"})


def find_restated(scene: Scene) -> Iterator[Draft]:
    """Each such remark with another statement behind it that is about the same."""
    found: set[tuple[int, int]] = set()
    for templates in (scene.words.own, scene.words.thrown, scene.words.recounted):
        spans = templates.find(scene.line, 1, len(scene.pieces))
        found.update(one for one in spans if scene.pieces[one[0] - 1].text not in _ADVISING)
    for begin, end in scene.words.edits.find(scene.pieces, 1, len(scene.pieces)):
        if not {piece.text for piece in scene.pieces[begin:end]} <= _BARE:
            found.add((begin, end))
    for begin, end in sorted(found):
        opening = opening_of(scene, begin, end)
        if opening is not None and opening > 0 and end < len(scene.pieces):
            draft = _restated(scene, opening, begin, end)
            if draft is not None:
                yield draft


def _restated(scene: Scene, opening: int, begin: int, end: int) -> Draft | None:
    start = _statement(scene, opening)
    if opening - start < 1:
        return None
    until = end
    for _ in range(_SENTENCES):
        until = answer_end(scene, until)
        found = _answered(scene, (start, opening), begin, (end, until)) if until > end else None
        if found is not None:
            return found
    return None


def _answered(scene: Scene, claim: tuple[int, int], begin: int, answer: tuple[int, int]) -> Draft | None:
    (start, opening), (end, until) = claim, answer
    pieces = scene.pieces
    swapped = _swapped(scene, range(start, opening), range(end, until))
    if swapped is not None:
        stop = max(until if until - end <= _SHORT else 0, min(scene.sentence_end(swapped, _AHEAD), len(pieces)))
        return Draft(opening, stop, "this_session", (start, opening), (end, stop))
    if not _plain(scene, begin, end):
        return None
    first, second = scene.content(range(start, opening)), scene.content(range(end, until))
    if any(pieces[at].measured for at in range(end, until)) or not second - first:
        return None
    last = next((at + 1 for at in range(until - 2, end - 1, -1) if pieces[at].ends), end)
    named = until - last <= _SHORT and pieces[until - 1].tag in _HEADS and not any(p.figure for p in pieces[last:until])
    if first & second or (named and opens(scene, end)):
        return Draft(opening, until, "this_session", (start, opening), (end, until))
    return None


def _plain(scene: Scene, begin: int, end: int) -> bool:
    """The remark is one that takes back by itself, not a "no" or "sorry"."""
    return any(
        (begin, end) in list(templates.find(scene.line, begin, begin + 1))
        for templates in (scene.words.own, scene.words.thrown)
    )


def _statement(scene: Scene, opening: int) -> int:
    """Where the statement before a remark begins: its sentence, or its breath and the one before."""
    pieces = scene.pieces
    marked = any(piece.mark for piece in pieces[max(0, opening - _BACK) : opening])
    borders = 0
    for at in range(opening - 2, max(-1, opening - _BACK), -1):
        if pieces[at].ends and opening - at - 1 >= _FEWEST:
            return at + 1
        if not marked and pieces[at].cue != pieces[at + 1].cue:
            borders += 1
            if borders == 1:
                return at + 1
    return max(0, opening - _BACK)


def answer_end(scene: Scene, end: int) -> int:
    """Behind what is said instead: one sentence, or two where the first has only a word or two."""
    if end >= len(scene.pieces):
        return end
    until = _unit_end(scene, end)
    if until - end <= _FEWEST and until < len(scene.pieces):
        until = _unit_end(scene, until)
    return until


def _unit_end(scene: Scene, place: int) -> int:
    pieces = scene.pieces
    until = scene.sentence_end(place, _AHEAD)
    if pieces[until - 1].ends or not any(piece.mark for piece in pieces[place:until]):
        border = next((at + 1 for at in range(place, until - 1) if pieces[at].cue != pieces[at + 1].cue), until)
        raw = not any(piece.mark for piece in pieces[max(0, place - _BACK) : until])
        return border if raw and border - place >= _FEWEST else until
    return until


def _swapped(scene: Scene, claim: range, answer: range) -> int | None:
    """A word of the answer whose counterpart is in the claim and which is not there itself."""
    said = {scene.pieces[at].text.removesuffix("'s") for at in claim}
    for at in answer:
        text = scene.pieces[at].text.removesuffix("'s")
        if len(text) > 1 and text not in said and said & scene.words.swaps.get(text, frozenset()):
            return at
    return None
