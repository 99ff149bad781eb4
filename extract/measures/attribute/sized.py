"""Names that a figure's attribute may have by how large the thing is: of a plank, half an inch is its thickness.

Takes the rows of data/magnitudes*.toml whose span the figure lies in; says nothing of a thing without a row. Source: as
each row says.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from extract.magnitudes import ANY, SIZE, Magnitude, magnitudes
from extract.measures.figure import Figure, Finding
from extract.measures.things import Thing
from extract.measures.wording import singular
from extract.units import to_unit

_LEFT, _BEHIND = 2, 4


def by_size(figure: Figure, finding: Finding) -> Iterator[tuple[str, str]]:
    """Each dimension that the figure may be of the thing it is of, or of one beside it, and how it was come by."""
    for place, thing in _things(figure, finding):
        names = sorted({row.what for row in _rows_of(thing.name) if _lies_within(figure, row)})
        rule = "sized alone" if len(names) == 1 else "sized"
        for name in names:
            yield f"{rule} {place}", name


def _things(figure: Figure, finding: Finding) -> Iterator[tuple[str, Thing]]:
    if finding.item is not None:
        yield "item", finding.item
    yield from ((f"before {place}", thing) for place, thing in enumerate(figure.things_left()[:_LEFT]))
    yield from (("behind", thing) for thing in figure.scene.things_in(figure.end, figure.end + _BEHIND)[:1])


@cache
def _rows_of(name: str) -> tuple[Magnitude, ...]:
    """Those of the longest part of the name that has any: of "left drawer runner" those of "drawer runner"."""
    words = tuple(name.split())
    for start in range(len(words)):
        for phrase in (words[start:], (*words[start:-1], singular(words[-1]))):
            rows = [row for row in magnitudes().by_thing.get(phrase, ()) if row.what not in (ANY, SIZE)]
            if rows:
                return tuple(rows)
    return ()


def _lies_within(figure: Figure, row: Magnitude) -> bool:
    unit = figure.quantity.unit
    if unit is None or unit.kind != row.kind:
        return False
    if row.context and row.context.isdisjoint(figure.scene.words):
        return False
    return row.low <= to_unit(figure.quantity.value, unit, row.unit) <= row.high
