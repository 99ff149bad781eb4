"""A statement quoted by its speaker and taken back, however far back it was made.

Takes "I said 5 1/2 for the A before. With his steel strings it must be 5", "i told you ten minutes in that jar / don't
do that six or seven" and "I said spruce, it's cedar"; refuses "like I said, 5 mm" and "she'd say i told you so".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.scene import Draft, Scene, alike, differ, stem

_CLAIM = 14
"""Words behind "I said" among which the figure taken back is said."""
_ANSWER = 26
"""Words behind it among which the right one is said."""
_HELD = 9
"""Words between "it's" and the right figure."""
_FIRM = 2
"""Shared words that tie a repeated figure to the statement it was first made in, where its value alone doesn't."""
_SAYABLE = frozenset({"NN", "NNS", "NNP", "NNPS", "JJ", "VBG", "RB"})


def find_said_before(scene: Scene) -> Iterator[Draft]:
    """Each quoted statement with another behind it that holds instead."""
    for begin, end in scene.words.said.find(scene.pieces, 0, len(scene.pieces)):
        before = scene.pieces[begin - 1] if begin else None
        if before is not None and before.text in scene.words.not_behind and not before.mark:
            continue
        found = _figures(scene, begin, end) or _words(scene, begin, end)
        if found is not None:
            yield found


def _figures(scene: Scene, said: int, end: int) -> Draft | None:
    pieces = scene.pieces
    wrong = next((at for at in range(end, min(end + _CLAIM, len(pieces))) if pieces[at].measured), None)
    if wrong is None:
        return None
    first = scene.measured(wrong)
    earlier = first_said(scene, wrong, said)
    for begin, after in scene.words.holding.find(pieces, wrong + 1, wrong + _ANSWER):
        right = next((at for at in range(after, min(after + _HELD, len(pieces))) if pieces[at].measured), None)
        if right is None:
            continue
        second = scene.measured(right)
        if not alike(first, second) or not differ(first, second):
            continue
        gone = (*(scene.measured(at) for at in earlier), first)
        where = (earlier[0], earlier[0] + 1) if earlier else (wrong, wrong + 1)
        return Draft(begin, right + 1, "this_session", where, (right, right + 1), gone, second, not earlier)
    return None


def first_said(scene: Scene, repeated: int, before: int) -> tuple[int, ...]:
    """Where the figure repeated at a place was first said: every time that it was said of the same thing."""
    one = scene.measured(repeated)
    found = scene.said_before(one, before)
    if len(found) < 2:
        return found
    words = scene.context(repeated)
    shared = {at: len(words & scene.context(at)) for at in found}
    best = max(found, key=lambda at: (shared[at], at))
    same = scene.measured(best)
    return tuple(
        at
        for at in found
        if at == best
        or (scene.measured(at).attribute, scene.measured(at).item) == (same.attribute, same.item) != (None, None)
        and shared[at] >= min(_FIRM, shared[best])
    )


def _words(scene: Scene, said: int, end: int) -> Draft | None:
    """ "I said spruce, it's cedar": what is quoted was said before, and one word stands for the other."""
    pieces = scene.pieces
    hold = next(iter(scene.words.holding.find(pieces, end + 1, end + 8)), None)
    if hold is None or hold[1] >= len(pieces) or any(piece.figure for piece in pieces[end : hold[1]]):
        return None
    last = hold[0] - 1
    if pieces[last].tag not in _SAYABLE or not _quoted_before(scene, end, hold[0], said):
        return None
    right = hold[1]
    until = _phrase_end(scene, right)
    if until is None or stem(pieces[until - 1].text) == stem(pieces[last].text):
        return None
    return Draft(said, until, "this_session", (end, hold[0]), (right, until), said_again=True)


def _quoted_before(scene: Scene, begin: int, end: int, before: int) -> bool:
    words = [piece.text for piece in scene.pieces[begin:end] if piece.tag in _SAYABLE]
    return bool(words) and all(scene.mentioned(word, before) for word in words)


def _phrase_end(scene: Scene, begin: int) -> int | None:
    """Behind a short phrase that ends in a noun, adjective or adverb; None where there is none."""
    found = None
    for at in range(begin, min(begin + 4, len(scene.pieces))):
        piece = scene.pieces[at]
        if piece.figure or piece.tag.startswith(("VB", "PRP", "MD")) and piece.tag != "VBG":
            break
        if piece.tag in _SAYABLE:
            found = at + 1
        if piece.mark or (at + 1 < len(scene.pieces) and scene.pieces[at + 1].cue != piece.cue):
            break
    return found
