"""The same figure said again in another unit.

Takes "1 1/8 inches, call it 28 and a half in new money"; refuses "2 mm, so the other is 3 mm" (same unit).
"""

from __future__ import annotations

from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge
from extract.units import system_of

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
