"""A statement quoted by its speaker and taken back, however far back it was made.

Takes "I said 5 1/2 for the A before. With his steel strings it must be 5", "i told you ten minutes in that jar / don't
do that six or seven" and "I said spruce, it's cedar"; refuses "like I said, 5 mm" and "she'd say i told you so".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.pieces import Piece
from extract.corrections.scene import EMPTY, Draft, Scene, alike, differ, kind_of, stem

_CLAIM = 14
"""Words behind "I said" among which the figure taken back is said."""
_ANSWER = 26
"""Words behind it among which the right one is said."""
_HELD = 9
"""Words between "it's" and the right figure."""
_COUNTED = 4
_FIRM = 2
"""Shared words that tie a repeated figure to the statement it was first made in, where its value alone doesn't."""
_BE = frozenset({"is", "was", "are", "were"})
_SAYABLE = frozenset({"NN", "NNS", "NNP", "NNPS", "JJ", "VB", "VBG", "RB", "FW"})


def find_said_before(scene: Scene) -> Iterator[Draft]:
    """Each quoted statement with another behind it that holds instead."""
    for begin, end in scene.words.said.find(scene.pieces, 0, len(scene.pieces)):
        before = scene.pieces[begin - 1] if begin else None
        if before is not None and before.text in scene.words.not_behind and not before.mark:
            continue
        found = (
            _figures(scene, begin, end)
            or _answered_before(scene, begin, end)
            or _counts(scene, begin, end)
            or _words(scene, begin, end)
        )
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


def _answered_before(scene: Scene, said: int, end: int) -> Draft | None:
    """ "It's a quarter watt, I told you half a watt": what holds was said first, and the other had been said before."""
    pieces = scene.pieces
    wrong = next((at for at in range(end, min(end + _HELD, len(pieces))) if pieces[at].measured), None)
    right = next((at for at in range(said - 1, max(-1, said - _HELD), -1) if pieces[at].measured), None)
    if wrong is None or right is None:
        return None
    first, second = scene.measured(wrong), scene.measured(right)
    earlier = first_said(scene, wrong, right)
    if not earlier or kind_of(first) != kind_of(second) or not differ(first, second):
        return None
    gone = (*(scene.measured(at) for at in earlier), first)
    return Draft(right, wrong + 1, "this_session", (earlier[0], earlier[0] + 1), (right, right + 1), gone, second)


def _counts(scene: Scene, said: int, end: int) -> Draft | None:
    """ "Did I say eighty grit? I meant a hundred and twenty": bare numbers of the same things."""
    pieces = scene.pieces
    wrong = next((at for at in range(end, min(end + _COUNTED, len(pieces))) if pieces[at].number), None)
    if wrong is None or pieces[wrong].measured or wrong + 1 >= len(pieces):
        return None
    for _, after in scene.words.holding.find(pieces, wrong + 1, wrong + _HELD):
        right = next((at for at in range(after, min(after + 3, len(pieces))) if pieces[at].number), None)
        if right is None or pieces[right].measured or right + 1 >= len(pieces):
            continue
        counted = stem(pieces[wrong + 1].text) == stem(pieces[right + 1].text)
        until = right + 2 if counted and not pieces[right].mark else right + 1
        if counted or pieces[after - 1].text == "meant":
            return Draft(said, until, "this_session", (wrong, wrong + 1), (right, until), said_again=True)
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
        or (
            (scene.measured(at).attribute, scene.measured(at).item) == (same.attribute, same.item) != (None, None)
            and shared[at] >= min(_FIRM, shared[best])
        )
    )


def _words(scene: Scene, said: int, end: int) -> Draft | None:
    """ "I said spruce, it's cedar": one word stands for another that was said before, or is said to be meant."""
    pieces = scene.pieces
    holds = scene.words.holding.find(pieces, end + 1, end + 8)
    hold = next((one for one in holds if pieces[one[0]].text not in _BE or one[1] - one[0] > 1), None)
    asked = pieces[said].text == "did"
    if hold is None and asked:
        hold = next(((at + 1, at + 1) for at in range(end, min(end + 5, len(pieces))) if pieces[at].ends), None)
    if hold is None or hold[1] >= len(pieces) or any(piece.figure for piece in pieces[end : hold[1]]):
        return None
    last = next((at for at in range(hold[0] - 1, end - 1, -1) if _sayable(pieces[at])), None)
    until = _phrase_end(scene, hold[1])
    if last is None or until is None or stem(pieces[until - 1].text) == stem(pieces[last].text):
        return None
    sure = asked or pieces[hold[1] - 1].text == "meant" or _swaps(scene, range(end, hold[0]), range(hold[1], until))
    if not (sure or _quoted_before(scene, end, hold[0], said)):
        return None
    return Draft(said, until, "this_session", (end, hold[0]), (hold[1], until), said_again=True)


def _sayable(piece: Piece) -> bool:
    return piece.tag in _SAYABLE and piece.text not in EMPTY


def _swaps(scene: Scene, claim: range, answer: range) -> bool:
    """The answer has the counterpart of a word of the claim: left and right, sharp and flat."""
    said = {scene.pieces[at].text for at in claim}
    return any(said & scene.words.swaps.get(scene.pieces[at].text, frozenset()) for at in answer)


def _quoted_before(scene: Scene, begin: int, end: int, before: int) -> bool:
    words = [piece.text for piece in scene.pieces[begin:end] if _sayable(piece)]
    return bool(words) and all(scene.mentioned(word, before) for word in words)


def _phrase_end(scene: Scene, begin: int) -> int | None:
    """Behind a short phrase that ends in a noun, adjective or adverb; None where there is none."""
    found = None
    for at in range(begin, min(begin + 4, len(scene.pieces))):
        piece = scene.pieces[at]
        if piece.figure or (piece.tag.startswith(("VB", "PRP", "MD")) and piece.tag != "VBG"):
            break
        if piece.tag in _SAYABLE:
            found = at + 1
        if piece.mark or (at + 1 < len(scene.pieces) and scene.pieces[at + 1].cue != piece.cue):
            break
    return found
