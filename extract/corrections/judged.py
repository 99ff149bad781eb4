"""A figure said again with a judgement that it is too much or too little, and the one that holds.

Takes "fuse it at 3 amps ... 3 is greedy for this set. Make it 1 amp"; refuses "anything over 3 is too much", "12 mm was
tight, the new one is 14 mm" and a figure that was not given before.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.openings import opens
from extract.corrections.plain import plain_words
from extract.corrections.scene import Draft, Scene, differ, same_kind
from extract.corrections.turns import unit_at

_REACH = 16
"""Words from the judgement to the figure that holds."""
_CLAUSE = 5
"""Words of the instruction before its figure: "give it another turn to"."""
_PLACING = frozenset({"so", "better", "let's", "i'd", "i'll", "we'll", "call", "then"})
_LATER = frozenset({"now", "would", "also", "next"})


def find_judged(scene: Scene) -> Iterator[Draft]:
    """Each earlier figure that is judged, with the instruction that gives another."""
    words, pieces = plain_words(), scene.pieces
    for begin, end in words.judging.find(scene.line, 1, len(pieces)):
        if not pieces[begin].figure or pieces[begin - 1].text in words.bounding:
            continue
        if any(piece.text in ("not", "never", "no") for piece in pieces[begin : end - 2]) or _asks(scene, end):
            continue
        right = _right(scene, begin, end)
        wrong = _given(scene, begin, right) if right is not None else None
        if right is None or wrong is None:
            continue
        gone = tuple(one for at in (wrong, begin) if (one := pieces[at].measured))
        spans = (wrong, wrong + 1), (right, right + 1)
        yield Draft(begin, right + 1, "this_session", *spans, gone, scene.measured(right))


def _asks(scene: Scene, end: int) -> bool:
    return any(piece.mark == "?" for piece in scene.pieces[end - 1 : unit_at(scene, end - 1)[1]])


def _right(scene: Scene, named: int, end: int) -> int | None:
    """The first figure of an instruction behind the judgement: "Make it 1 amp", "Unlay 300 mm"."""
    first = scene.pieces[named].measured
    for at in range(end, min(end + _REACH, len(scene.pieces))):
        second = scene.pieces[at].measured
        if second is None or not second.quantity.unit_said or second.quantity.difference:
            continue
        if first is not None and first.quantity.unit_said and not same_kind(first, second):
            continue
        if _instructs(scene, at, end):
            return at
    return None


def _instructs(scene: Scene, figure: int, end: int) -> bool:
    """The clause of a figure begins with a verb in its base form, or with words that lay down what holds."""
    pieces, words = scene.pieces, scene.words
    for at in range(figure - 1, max(end, figure - _CLAUSE) - 1, -1):
        if opens(scene, at):
            while at < figure - 1 and pieces[at].text in words.leading:
                at += 1
            laid = bool(words.laying_down.at(pieces, at)) and pieces[at].text not in ("it's", "it", "they")
            later = any(piece.text in _LATER for piece in pieces[at:figure])
            told = pieces[at].tag == "VB" or pieces[at].text in _PLACING or _told_before(scene, at, figure)
            return not later and (told or laid)
    return False


def _told_before(scene: Scene, at: int, figure: int) -> bool:
    """The word right before the figure alone is its clause, and was said before: "Unlay it 200 mm ... Unlay 300 mm"."""
    return at == figure - 1 and scene.mentioned(scene.pieces[at].text, at)


def _given(scene: Scene, named: int, right: int) -> int | None:
    """The latest place where the judged figure was given, of the kind that holds."""
    number, second = scene.pieces[named].number, scene.measured(right)
    if number is None:
        return None
    for at in reversed(scene.figures):
        first = scene.measured(at)
        if at < named and first.quantity.number.value == number.value and same_kind(first, second):
            return at if differ(first, second) else None
    return None
