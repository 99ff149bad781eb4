"""When a measure of a record is the figure that a demo session contains."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

import pint

from demo_sessions.truth import TimedFigure
from extract.record import Measure

SECONDS_APART = 3.0
"""A figure starts where the synthesiser says it does; a transcriber's word times wander around a pause."""


def heard_rightly(truth: Sequence[TimedFigure], record: Sequence[Measure]) -> list[TimedFigure]:
    """The figures that reached the record right in value, unit and moment, each by a measure of its own."""
    free = list(record)
    right = []
    for figure in truth:
        hits = [one for one in free if abs(one.start - figure.start) <= SECONDS_APART and same_quantity(figure, one)]
        if hits:
            free.remove(min(hits, key=lambda one: abs(one.start - figure.start)))
            right.append(figure)
    return right


def same_quantity(figure: TimedFigure, measure: Measure) -> bool:
    """Value and unit agree within a thousandth; a range agrees by both ends."""
    if measure.unit is None:
        return False
    ends = (figure.low, figure.high) if figure.low is not None else (figure.value,)
    said = (measure.low, measure.high) if figure.low is not None else (measure.value,)
    if figure.low is None and measure.low is not None:
        return False
    return all(_equal(want, figure.unit, got, measure.unit) for want, got in zip(ends, said, strict=True))


def _equal(want: float | None, unit: str, got: float | None, got_unit: str) -> bool:
    if want is None or got is None:
        return False
    if unit == got_unit:
        return abs(want - got) <= 1e-3 * abs(want)
    try:
        converted = _registry().Quantity(got, got_unit).to(unit).magnitude
    except (pint.DimensionalityError, pint.UndefinedUnitError):
        return False
    return bool(abs(want - converted) <= 1e-3 * abs(want))


@cache
def _registry() -> pint.UnitRegistry[float]:
    return pint.UnitRegistry()
