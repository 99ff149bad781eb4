"""A figure of the record in the other system of units.

The record keeps the figure as it was said; how precisely that was is read off its written form, and the rest is left to
the published rules in `extract.convert`.
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Literal

from extract.convert import precision_of, quantity_in_other_system
from extract.record import Measure
from extract.spans import Number, Quantity, Unit
from extract.units import System, interval_to_unit, to_unit, unit_rows
from publish.wording import LIMITS
from publish.written import exact, fineness

_INCH = "inch"
_SPACE = "\N{NO-BREAK SPACE}"
_FRACTION = re.compile(rf"(?P<decimal>[\d.]+){_SPACE}in \((?P<fraction>[\d /]+){_SPACE}in\)")


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
    if converted is None:
        return None
    told = _with_error(converted, number, row.unit) if number.low is None else converted
    return told if measure.limit is None else f"{LIMITS[measure.limit]} {told}"


def _with_error(converted: str, number: Number, unit: Unit) -> str:
    """A fraction of an inch with what it is off by, where that is more than the figure was said to.

    2.54 mm is 0.1000 in, and 3/32 in is 0.0063 in less; 15 mm is no more exact than the 19/32 in that it is given as.
    """
    found = _FRACTION.fullmatch(converted)
    if found is None:
        return converted
    exactly = to_unit(number.value, unit, _INCH)
    off = sum(Fraction(part) for part in found["fraction"].split()) - exactly
    places = len(found["decimal"].partition(".")[2])
    shown = f"{float(abs(off)):.{places}f}"
    if abs(off) <= interval_to_unit(precision_of(number).step, unit, _INCH) / 2 or not float(shown):
        return converted
    return f"{converted.removesuffix(')')} {'less' if off > 0 else 'and'} {shown}{_SPACE}in)"


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
