"""A unit put right in the same breath.

Takes "12 inches, sorry, millimeters" and "ten millimeters i mean thou"; refuses "12 inches, no inches left" and "12
inches, sorry, feet first".
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from extract.corrections.scene import Draft, Scene
from extract.spans import Unit
from extract.units import unit_rows

_LONGEST = 3
"""Words of a unit: "foot pounds", "inch pounds", "degrees celsius"."""


def find_unit_slips(scene: Scene) -> Iterator[Draft]:
    """Each figure with an edit phrase and another unit of its kind behind it."""
    pieces = scene.pieces
    for at in scene.figures:
        length = scene.words.edits.at(pieces, at + 1) if at + 1 < len(pieces) else 0
        begin = at + 1 + length
        if not length or begin >= len(pieces):
            continue
        wrong = scene.measured(at)
        for words in range(_LONGEST, 0, -1):
            unit = _units().get(" ".join(piece.text for piece in pieces[begin : begin + words]))
            if unit is None or begin + words > len(pieces):
                continue
            said = wrong.quantity.unit
            if said is not None and said.kind == unit.kind and said.name != unit.name:
                span = (begin, begin + words)
                yield Draft(at + 1, span[1], "this_session", (at, at + 1), span, (wrong,), unit=unit)
            break


@cache
def _units() -> dict[str, Unit]:
    """Spoken forms of at least three letters: "in" and "m" are words of their own."""
    return {form: row.unit for row in unit_rows().values() for form in row.said if len(form) > 2}
