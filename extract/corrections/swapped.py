"""A word put right by its counterpart.

Takes "down. No, hang on, up", "the second string I'm filing, sorry, third", "the E string, no, the A" and "the bass
side, treble side I mean"; refuses "a nudge on the left, wait, a nudge on the right" and "no, right, let's see".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.openings import opens
from extract.corrections.scene import Draft, Scene
from extract.corrections.turns import asks, unit_at

_BACK = 10
_AHEAD = 4
_BEHIND = 3
_SMALL = frozenset({"DT", "IN", "TO", "PRP$", "RB", "UH"})
_NOTES = frozenset("abcdefg")
_OF_NOTES = frozenset({"string", "strings", "sharp", "flat", "note", "peg", "key", "side", "reed", "course", "natural"})
_FOR = frozenset({"for", "here", "left", "in", "at", "on", "needed", "about"})
_NAMING = frozenset({"it's", "that's", "they're"})
_BARE = frozenset({"no", "nope", "well", "more", "like"})


def find_swapped(scene: Scene) -> Iterator[Draft]:
    """Each word beside an edit phrase whose counterpart stands before it."""
    pieces = scene.pieces
    edits = [*scene.edit_runs, *_weakly(scene)]
    for begin, end in sorted(edits):
        right = _swapped(scene, begin, end)
        wrong = _wrong(scene, begin, right) if right is not None else None
        if right is not None and wrong is not None and _may_be_slip(scene, wrong, begin, end, right):
            until = scene.sentence_end(right, _BEHIND)
            yield Draft(begin, until, "this_session", (max(0, wrong - 1), min(begin, wrong + 2)), (end, until))
    for begin, end in scene.words.behind.find(pieces, 2, len(pieces)):
        if not (end >= len(pieces) or pieces[end - 1].mark or pieces[end].cue != pieces[end - 1].cue):
            continue
        right = next((at for at in range(begin - 1, max(0, begin - _BEHIND), -1) if _counterparts(scene, at)), None)
        wrong = _wrong(scene, right, right) if right is not None else None
        near = right is not None and any(opens(scene, at) for at in (right, right - 1))
        if (
            right is not None
            and wrong is not None
            and (right - wrong <= _AHEAD or near)
            and pieces[right - 1].text not in ("or", "and")
        ):
            yield Draft(right, end, "this_session", (wrong, right), (right, begin))


def _weakly(scene: Scene) -> Iterator[tuple[int, int]]:
    """ "Before you fit it. Actually, after": a weaker phrase at an opening, the counterpart at once behind it."""
    pieces = scene.pieces
    for begin, end in scene.words.weak_edits.find(pieces, 1, len(pieces) - 1):
        alone = end + 1 >= len(pieces) or opens(scene, end + 1)
        if end < len(pieces) and opens(scene, begin) and alone and _counterparts(scene, end):
            yield begin, end


def _counterparts(scene: Scene, at: int) -> frozenset[str]:
    """The words that a word may be a slip for; a lone letter is a note only where the words about it say so."""
    pieces = scene.pieces
    text = pieces[at].text
    if text not in _NOTES:
        return scene.words.swaps.get(text, frozenset())
    closed = at + 1 >= len(pieces) or pieces[at].mark or pieces[at + 1].cue != pieces[at].cue
    return _NOTES - {text} if closed or pieces[at + 1].text in _OF_NOTES else frozenset()


def _swapped(scene: Scene, begin: int, end: int) -> int | None:
    pieces = scene.pieces
    again = {piece.text for piece in pieces[max(0, begin - _BEHIND) : begin]}
    for at in range(end, min(end + _AHEAD, len(pieces))):
        if _counterparts(scene, at):
            return at
        if at == end and pieces[at].text in again and not pieces[at].mark:
            continue  # "heads in, no, heads out"
        if pieces[at].figure or not (pieces[at].tag in _SMALL or pieces[at].text in scene.words.fillers):
            return None
    return None


def _wrong(scene: Scene, begin: int, right: int) -> int | None:
    others = _counterparts(scene, right)
    for at in range(begin - 1, max(-1, begin - _BACK), -1):
        if scene.pieces[at].text in others and (scene.pieces[at].text not in _NOTES or _counterparts(scene, at)):
            return at
    return None


def _denies(scene: Scene, end: int, right: int) -> bool:
    """The "no" belongs to the noun behind it: "white oak, no cherry for these"."""
    pieces = scene.pieces
    bound = pieces[end - 1].text == "no" and not pieces[end - 1].mark and right == end
    return bound and right + 1 < len(pieces) and not pieces[right].mark and pieces[right + 1].text in _FOR


def _both_named(scene: Scene, wrong: int, begin: int, right: int) -> bool:
    """Both were named side by side: "the upper and the lower pivot. Ah, lower"."""
    said = [piece.text for piece in scene.pieces[max(0, wrong - _AHEAD) : min(begin, wrong + _AHEAD)]]
    return scene.pieces[right].text in said and ("and" in said or "or" in said)


def _may_be_slip(scene: Scene, wrong: int, begin: int, end: int, right: int) -> bool:
    """A bare "no" must stand close to both words, answer nothing and be followed by no more than the right one."""
    pieces = scene.pieces
    if any(pieces[at].measured for at in range(wrong, right)) or _both_named(scene, wrong, begin, right):
        return False
    if begin not in scene.edit_ends and asks(scene, (unit_at(scene, wrong)[0], begin)):
        return False  # "the front or the back? Oh, back"
    if not {piece.text for piece in pieces[begin:end]} <= _BARE:
        return True
    if _denies(scene, end, right) or asks(scene, (unit_at(scene, wrong)[0], begin)):
        return False
    closed = scene.words.behind.at(pieces, right + 1) if right + 1 < len(pieces) else 0
    if closed and opens(scene, right + 1 + closed):
        return True  # "the second drawer, no, third, sorry"
    if pieces[end].text in _NAMING and right - end <= _BEHIND:
        return begin - wrong <= _BACK
    answered = pieces[end - 1].ends and not pieces[begin - 1].ends
    sentence = pieces[begin - 1].ends and not (right + 1 >= len(pieces) or pieces[right].mark)
    return begin - wrong <= _BEHIND and right - end <= _BEHIND - 1 and not answered and not sentence
