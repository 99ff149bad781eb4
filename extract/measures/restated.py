"""The same figure said again in another unit.

Takes "1 1/8 inches, call it 28 and a half in new money"; refuses "2 mm, so the other is 3 mm" (same unit).
"""

from __future__ import annotations

from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge
from extract.units import system_of

_LONGEST_STEP = 9
"""Tokens between a figure and the one that goes on with it."""
_LONGEST_GAP = 6
"""Words between the two figures."""


def find_restated(figure: Figure) -> Finding | None:
    """The finding that a figure says again, or None."""
    previous = figure.previous
    if previous is None:
        return None
    unit, other = figure.quantity.unit, previous.figure.quantity.unit
    if unit is None or other is None or unit.kind != other.kind or unit.name == other.name:
        return None
    if system_of(unit) == system_of(other) and unit.kind == "length":
        same_system = True
    else:
        same_system = False
    gap = figure.gap()
    if len(gap) > _LONGEST_GAP or not _only_joins(gap):
        return None
    if same_system and "by" in gap:
        return None
    return previous


def find_followed(figure: Figure) -> Finding | None:
    """The finding that a figure goes on with: no verb and no thing of its own stands between the two.

    Takes "4.5 on the A and 6 on the C", "five or, at the heel, six"; refuses "the nut is 5 and the saddle 7".
    """
    previous = figure.previous
    if previous is None or figure.kind != previous.figure.kind or previous.figure.start < figure.sentence[0]:
        return None
    scene, start = figure.scene, previous.figure.end
    if figure.start - start <= _LONGEST_STEP and _takes_back(figure.gap()):
        return previous
    if not 0 < figure.start - start <= _LONGEST_STEP:
        return None
    if any(tag[:2] in ("VB", "MD", "PR", "EX") for tag in scene.tags[start : figure.start]):
        return None
    if {"'s", "'re", "so", "by", "times", "minus", "plus"} & set(scene.words[start : figure.start]):
        return None
    if any(not thing.preposition for thing in scene.things_in(start, figure.start)):
        return None
    return previous


def _takes_back(gap: tuple[str, ...]) -> bool:
    return any(gap[at : at + len(phrase)] == phrase for phrase in knowledge().takes_back for at in range(len(gap)))


def _only_joins(gap: tuple[str, ...]) -> bool:
    at = 0
    while at < len(gap):
        for phrase in knowledge().restated:
            if gap[at : at + len(phrase)] == phrase:
                at += len(phrase)
                break
        else:
            return False
    return True
