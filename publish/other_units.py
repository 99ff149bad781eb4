"""A figure of the record in the other system of units.

The record keeps the figure as it was said; how precisely that was is read off its written form, and the rest is left to
the published rules in `extract.convert`.
"""

from __future__ import annotations

from typing import Literal

from extract.convert import quantity_in_other_system
from extract.record import Measure
from extract.spans import Number, Quantity
from extract.units import System, unit_rows
from publish.wording import LIMITS
from publish.written import exact, fineness


def system_of(measure: Measure) -> System | None:
    """The system that the figure's unit belongs to; null for units that both share, such as percent."""
    row = unit_rows().get(measure.unit or "")
    return row.system if row else None


def in_other_units(measure: Measure) -> str | None:
    """The figure in the other system, rounded; null where there is nothing to convert."""
    row = unit_rows().get(measure.unit or "")
    if row is None or row.system is None:
        return None
    number = _number(measure)
    converted = quantity_in_other_system(
        Quantity(
            start=0,
            end=0,
            value=number.value,
            low=number.low,
            high=number.high,
            unit=row.unit,
            unit_said=measure.unit_said,
            number=number,
            hedged=measure.hedged,
            difference=measure.difference,
        )
    )
    if converted is None or measure.limit is None:
        return converted
    return f"{LIMITS[measure.limit]} {converted}"


def _number(measure: Measure) -> Number:
    """The number as it was said, read off the written figure."""
    said = fineness(measure.display)
    form: Literal["fraction", "decimal", "integer"] = (
        "fraction" if said.below else "decimal" if said.decimals else "integer"
    )
    return Number(
        start=0,
        end=0,
        value=exact(measure.value),
        form=form,
        low=None if measure.low is None else exact(measure.low),
        high=None if measure.high is None else exact(measure.high),
        denominator=said.below or None,
        decimals=said.decimals or None,
    )
