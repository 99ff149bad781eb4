"""A statement quoted by its speaker and taken back, however far back it was made.

Takes "I said 5 1/2 for the A before. With his steel strings it must be 5", "i told you ten minutes in that jar / don't
do that six or seven" and "I said spruce, it's cedar"; refuses "like I said, 5 mm" and "she'd say i told you so".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.openings import opens
from extract.corrections.pieces import Piece
from extract.corrections.plain import plain_words
from extract.corrections.scene import Draft, Scene, alike, differ, kind_of
from extract.corrections.subjects import of_another
from extract.roots import stem

_CLAIM = 14
"""Words behind "I said" among which the figure taken back is said."""
_ANSWER = 26
"""Words behind it among which the right one is said."""
_NEAR, _HELD = 3, 9
"""Words between "it's" and the right figure."""
_ASKED = 6
_SHORT = 4
"""Words of "I said" and what it is of, behind which the figure may stand in the next sentence."""
_FIRM = 2
"""Shared words that tie a repeated figure to the statement it was first made in, where its value alone doesn't."""
_AFFIRMED, _LONG = 16, 6
_JOINS = frozenset({"and", "but", "so"})
_SMALL = frozenset({"DT", "IN", "TO", "PRP", "CC"})
_BE = frozenset({"is", "was", "are", "were"})
_SAYABLE = frozenset({"NN", "NNS", "NNP", "NNPS", "JJ", "VB", "VBG", "VBP", "VBZ", "VBD", "VBN", "RB", "FW"})


def find_said_before(scene: Scene) -> Iterator[Draft]:
    """Each quoted statement with another behind it that holds instead."""
    for begin, end in scene.words.said.find(scene.pieces, 0, len(scene.pieces)):
        before = scene.pieces[begin - 1] if begin else None
        asked = scene.pieces[begin].text == "did"
        follows = scene.pieces[end].text if end < len(scene.pieces) else ""
        if (scene.pieces[end - 1].text == "said" and follows == "to") or (
            follows == "about" and (before is None or before.text != "what")
        ):
            continue
        if before is not None and before.text in scene.words.not_behind and not before.mark and not asked:
            continue
        found = (
            _figures(scene, begin, end)
            or _asked(scene, begin, end)
            or _answered_before(scene, begin, end)
            or _words(scene, begin, end)
        )
        if found is not None:
            yield found
    for begin, end in scene.words.weakly_said.find(scene.pieces, 0, len(scene.pieces)):
        found = _figures(scene, begin, end)
        if found is not None and len(found.gone) > 1 and _firmly(scene, end, found):
            yield found


def _firmly(scene: Scene, end: int, found: Draft) -> bool:
    """A firm word stands before the figure that holds, and the wrong one had been said before."""
    return any(piece.text in scene.words.firm for piece in scene.pieces[end : found.holds[0]])


def _figures(scene: Scene, said: int, end: int) -> Draft | None:
    pieces = scene.pieces
    wrong = next((at for at in range(end, min(end + _CLAIM, len(pieces))) if pieces[at].measured), None)
    if wrong is None:
        return None
    if wrong - end > _SHORT and any(pieces[at].ends for at in range(end, wrong)):
        return None
    first = scene.measured(wrong)
    earlier = first_said(scene, wrong, said)
    for begin, after in scene.words.holding.find(pieces, wrong + 1, wrong + _ANSWER):
        right = next((at for at in range(after, min(after + _HELD, len(pieces))) if pieces[at].measured), None)
        if right is None or not (right - after <= _NEAR or opens(scene, right) or _led(pieces[right - 1])):
            continue
        second = scene.measured(right)
        if not alike(first, second) or not differ(first, second) or of_another(scene, said, wrong, right):
            continue
        gone = (*(scene.measured(at) for at in earlier), first)
        where = (earlier[0], earlier[0] + 1) if earlier else (wrong, wrong + 1)
        return Draft(begin, right + 1, "this_session", where, (right, right + 1), gone, second, not earlier)
    return None


def _led(before: Piece) -> bool:
    """Right behind such a word stands what holds: "to", "is"."""
    return before.text in plain_words().leads


def _asked(scene: Scene, said: int, end: int) -> Draft | None:
    """ "Did I say 20? 25 mm, please": the question alone takes it back, the next figure holds."""
    pieces = scene.pieces
    wrong = next((at for at in range(end, min(end + _ASKED, len(pieces))) if pieces[at].measured), None)
    if wrong is None or not (pieces[said].text == "did" or pieces[wrong].mark == "?"):
        return None
    right = next((at for at in range(wrong + 1, min(wrong + _ASKED, len(pieces))) if pieces[at].measured), None)
    if right is None or not alike(scene.measured(wrong), scene.measured(right)):
        return None
    first, second = scene.measured(wrong), scene.measured(right)
    if not differ(first, second):
        return None
    earlier = first_said(scene, wrong, said)
    where = (earlier[0], earlier[0] + 1) if earlier else (wrong, wrong + 1)
    gone = (*(scene.measured(at) for at in earlier), first)
    return Draft(said, right + 1, "this_session", where, (right, right + 1), gone, second, not earlier)


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
    hold = _naming(scene, end)
    asked = pieces[said].text == "did"
    if hold is None:
        hold = _next_sentence(scene, end, asked)
    if hold is None:
        return _the_one(scene, said, end)
    if hold[1] >= len(pieces) or any(piece.figure for piece in pieces[end : hold[1]]):
        return None
    last = next((at for at in range(hold[0] - 1, end - 1, -1) if _sayable(scene, pieces[at])), None)
    until = _phrase_end(scene, hold[1])
    if last is None or until is None or stem(pieces[until - 1].text) == stem(pieces[last].text):
        return None
    sure = (
        asked
        or scene.words.habitual.at(pieces, said)
        or pieces[hold[1] - 1].text == "meant"
        or _swaps(scene, range(end, hold[0]), range(hold[1], until))
    )
    if not (sure or _quoted_before(scene, end, hold[0], said)):
        return None
    return Draft(said, until, "this_session", (end, hold[0]), (hold[1], until), said_again=True)


def _the_one(scene: Scene, said: int, end: int) -> Draft | None:
    """ "I told you linen. Cotton's the one", "I said from the tail. From the head is right"."""
    pieces = scene.pieces
    for begin, behind in scene.words.affirming.find(scene.line, end + 2, end + _AFFIRMED):
        if pieces[begin].text == "the" and not pieces[begin - 1].text.endswith(("'s", "is", "are")):
            continue
        start = next(
            (at for at in range(begin - 1, end, -1) if pieces[at - 1].ends or pieces[at - 1].text in _JOINS), 0
        )
        if not start or begin - start > _LONG or any(piece.figure for piece in pieces[end:begin]):
            continue
        claim = scene.sentence_end(end, _CLAIM)
        said_then = {piece.text for piece in pieces[end:claim]}
        others = {p.text for p in pieces[start:begin] if p.tag not in _SMALL} - said_then - scene.words.empty
        if start >= claim and others:
            return Draft(said, behind, "this_session", (end, claim), (start, behind), said_again=True)
    return None


def _naming(scene: Scene, end: int) -> tuple[int, int] | None:
    """The "it's" between what was said and what is meant; a bare "is" is part of what was said."""
    pieces = scene.pieces
    for begin, behind in scene.words.holding.find(pieces, end + 1, end + 8):
        if pieces[begin].text in scene.words.naming and not (behind - begin == 1 and pieces[begin].text in _BE):
            return begin, behind
    return None


def _next_sentence(scene: Scene, end: int, asked: bool) -> tuple[int, int] | None:
    """ "Did I say pine? Poplar.": the answer is a sentence of its own, of a word or three."""
    pieces = scene.pieces
    closing = next((at for at in range(end, min(end + 5, len(pieces))) if pieces[at].ends), None)
    if closing is None:
        return None
    short = any(pieces[at].ends for at in range(closing + 1, min(closing + 4, len(pieces))))
    return (closing + 1, closing + 1) if asked or short else None


def _sayable(scene: Scene, piece: Piece) -> bool:
    return piece.tag in _SAYABLE and piece.text not in scene.words.empty


def _swaps(scene: Scene, claim: range, answer: range) -> bool:
    """The answer has the counterpart of a word of the claim: left and right, sharp and flat."""
    said = {scene.pieces[at].text for at in claim}
    return any(said & scene.words.swaps.get(scene.pieces[at].text, frozenset()) for at in answer)


def _quoted_before(scene: Scene, begin: int, end: int, before: int) -> bool:
    words = [piece.text for piece in scene.pieces[begin:end] if _sayable(scene, piece)]
    words = [word for word in words if word not in scene.words.meanwhile]
    return bool(words) and all(scene.mentioned(word, before) for word in words)


def _phrase_end(scene: Scene, begin: int) -> int | None:
    """Behind a short phrase that ends in a noun, adjective or adverb; None where there is none."""
    found = None
    for at in range(begin, min(begin + 4, len(scene.pieces))):
        piece = scene.pieces[at]
        if piece.text in scene.words.empty or piece.text.endswith("n't"):
            break
        if piece.figure or (at > begin and piece.tag.startswith(("VB", "MD"))) or piece.tag in ("PRP", "MD"):
            break
        if piece.tag in _SAYABLE:
            found = at + 1
        if piece.mark or (at + 1 < len(scene.pieces) and scene.pieces[at + 1].cue != piece.cue):
            break
    return found
