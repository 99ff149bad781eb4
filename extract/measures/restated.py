"""The same figure said again in another unit.

Takes "1 1/8 inches tall, call it 28 and a half in new money"; refuses "2 mm, so the other is 3 mm" (same unit).
"""

from __future__ import annotations

from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge
from extract.units import to_unit

_LONGEST_STEP = 9
"""Tokens between a figure and the one that goes on with it."""
_FURTHEST_APART = 3
"""Ratio between a figure and a wrong conversion of it; further apart they are two measures."""
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
    start = max(previous.figure.end, previous.word.end if previous.word else 0)
    gap = figure.scene.text(start, figure.start)
    if len(gap) > _LONGEST_GAP or not _only_joins(gap) or not _near(figure, previous):
        return None
    return previous


def _near(figure: Figure, previous: Finding) -> bool:
    """Wrong conversions are still restatements; figures of another order are not."""
    unit, other = figure.quantity.unit, previous.figure.quantity.unit
    if unit is None or other is None or unit.kind == "temperature":
        return True
    one = to_unit(abs(figure.quantity.value), unit, other)
    two = abs(previous.figure.quantity.value)
    return min(one, two) * _FURTHEST_APART >= max(one, two)


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
    gap = set(figure.gap())
    if gap & knowledge().ought and gap <= knowledge().ought | knowledge().pronouns:
        return previous
    if any(tag[:2] in ("VB", "MD", "PR", "EX") for tag in scene.tags[start : figure.start]):
        return None
    if knowledge().clause.begins_anew & set(scene.words[start : figure.start]):
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
