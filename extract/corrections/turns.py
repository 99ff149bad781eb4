"""What stands before and behind a remark: the statement that it may take back, and what is said instead."""

from __future__ import annotations

from bisect import bisect_right
from functools import lru_cache

from extract.corrections.plain import plain_words
from extract.corrections.scene import Scene
from extract.corrections.signs import signs_of
from extract.corrections.statements import unit_starts

LONGEST = 18
"""Words of a statement or an answer."""
_SHORT = 3
_LEADS = frozenset({"so", "and", "now", "well", "but", "right", "then", "ok", "okay", "oh", "erm", "er"})
_TRIMMED = frozenset({"no", "sorry", "actually", "wait", "well", "oh", "look", "so", "and", "but", "er", "erm", "ah"})


@lru_cache(maxsize=1)
def units_of(scene: Scene) -> tuple[int, ...]:
    """Where each sentence begins, and the end of the talk; without marks, each breath."""
    return tuple(unit_starts(scene))


def unit_at(scene: Scene, place: int) -> tuple[int, int]:
    """The sentence or breath that a place is in."""
    units = units_of(scene)
    number = min(bisect_right(units, place) - 1, len(units) - 2)
    return units[number], units[number + 1]


def cry_end(scene: Scene, place: int) -> int:
    """Behind all the phrases of surprise, of stopping or of taking back that begin at a place; it where none does."""
    phrases = (plain_words().cries, scene.words.edits, scene.words.weak_edits)
    end = place
    while end < len(scene.pieces):
        length = max(one.at(scene.pieces, end) for one in phrases)
        if not length:
            break
        end += length
    return end


def before(scene: Scene, place: int) -> tuple[int, int] | None:
    """What was said right before a place: the rest of its sentence or breath, or the one before where that is short."""
    start = unit_at(scene, place)[0]
    while place - start < _SHORT and start > 0:
        start = unit_at(scene, start - 1)[0]
    return (max(start, place - LONGEST), place) if place > start else None


def behind(scene: Scene, place: int) -> tuple[int, int] | None:
    """What is said from a place on: to the end of its sentence or breath, or of the next where that is short."""
    last = len(scene.pieces)
    at = place
    while at < last - 1 and scene.pieces[at].text in _TRIMMED:
        at += 1
    if at >= last:
        return None
    end = unit_at(scene, at)[1]
    if end - at < _SHORT and end < last and not scene.pieces[end - 1].ends:
        end = unit_at(scene, end)[1]
    return (at, min(end, at + LONGEST)) if end > at else None


def is_stated(scene: Scene, claim: tuple[int, int]) -> bool:
    """The speaker says it himself as a thing that is so: no question, nothing supposed or told by others, no denial."""
    words, pieces = plain_words(), scene.pieces
    if asks(scene, claim):
        return False
    said = [piece.text for piece in pieces[claim[0] : claim[1]]]
    if any(text in words.supposed or text.endswith("n't") or text in ("not", "never") for text in said):
        return False
    return signs_of(scene).within("others", *claim) is None


def asks(scene: Scene, claim: tuple[int, int]) -> bool:
    """It is a question, by its mark or by how it begins: "is it brass"."""
    pieces = scene.pieces
    if any(piece.mark == "?" for piece in pieces[claim[0] : claim[1]]):
        return True
    first = claim[0]
    while first < claim[1] - 1 and pieces[first].text in _LEADS:
        first += 1
    return pieces[first].text in plain_words().asking and first + 1 < claim[1]
