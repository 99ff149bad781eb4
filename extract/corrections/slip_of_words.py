"""A word put right in the same breath.

Takes "the strike side no the time side", "that's ringing a g / no excuse me a g sharp" and "it's spruce, sorry, cedar";
refuses "no, you don't want that", "sorry about the noise" and "a nudge on the left, wait, a nudge on the right".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.pieces import Piece
from extract.corrections.scene import Draft, Scene, stem

_BACK = 5
_AHEAD = 4
_DETERMINERS = frozenset({"DT", "PRP$", "IN", "TO"})
_NOUNS = frozenset({"NN", "NNS", "NNP", "NNPS", "JJ"})
_OPENERS = frozenset("about for that if but you we they he she to when because it's i'm is there don't not".split())


def find_word_slips(scene: Scene) -> Iterator[Draft]:
    """Each phrase said again with another word in it."""
    for begin, end in scene.words.edits.find(scene.pieces, 1, len(scene.pieces) - 1):
        found = _again(scene, begin, end)
        if found is not None:
            yield found


def _again(scene: Scene, begin: int, end: int) -> Draft | None:
    pieces = scene.pieces
    if pieces[end].text in _OPENERS or pieces[end].figure:
        return None
    until = _phrase_end(scene, end)
    if until is None:
        return None
    start = _start_of_wrong(scene, begin, end, until)
    if start is None:
        return None
    return Draft(begin, until, "this_session", (start, begin), (end, until))


def _phrase_end(scene: Scene, begin: int) -> int | None:
    """Behind the noun phrase at a place; None where something else stands there."""
    pieces = scene.pieces
    found = None
    for at in range(begin, min(begin + _AHEAD, len(pieces))):
        piece = pieces[at]
        if piece.figure or piece.tag not in _NOUNS | _DETERMINERS | {"RB", "NNP"}:
            break
        if piece.tag in _NOUNS:
            found = at + 1
        if piece.mark or (at + 1 < len(pieces) and pieces[at + 1].cue != piece.cue):
            break
    return found


def _start_of_wrong(scene: Scene, begin: int, end: int, until: int) -> int | None:
    """Where the wrong phrase begins: at the same first word, with the same noun in it, or one word for one word."""
    pieces = scene.pieces
    right = pieces[end:until]
    for start in range(begin - 1, max(-1, begin - _BACK - 1), -1):
        if pieces[start].figure or (pieces[start].ends and start < begin - 1):
            return None
        wrong = pieces[start:begin]
        if pieces[start].text == right[0].text and _parallel(wrong, right):
            return start
    firm = any(mark for mark in (pieces[begin - 1].mark,)) or pieces[begin].cue != pieces[begin - 1].cue
    bare_no = {piece.text for piece in pieces[begin:end]} <= {"no", "nope"}
    lone = len(right) == 1 and right[0].tag in _NOUNS and pieces[begin - 1].tag in _NOUNS
    closed = bool(right[-1].mark) or until == len(pieces) or pieces[until].cue != right[-1].cue
    if lone and closed and (firm or not bare_no) and stem(right[0].text) != stem(pieces[begin - 1].text):
        return begin - 1
    return None


def _parallel(wrong: tuple[Piece, ...], right: tuple[Piece, ...]) -> bool:
    """The two have a first word in common, end in nouns and are not the same."""
    if wrong[-1].tag not in _NOUNS or right[-1].tag not in _NOUNS or abs(len(wrong) - len(right)) > 1:
        return False
    return [stem(piece.text) for piece in wrong] != [stem(piece.text) for piece in right]
