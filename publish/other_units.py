"""A figure in the other system of units."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_HALF_EVEN, Decimal
from typing import Literal

from extract.record import Measure

System = Literal["metric", "imperial"]


@dataclass(frozen=True, slots=True)
class _Counterpart:
    system: System
    symbol: str
    factor: Decimal
    offset: Decimal = Decimal(0)


_COUNTERPARTS = {
    "inch": _Counterpart("imperial", "mm", Decimal("25.4")),
    "thou": _Counterpart("imperial", "mm", Decimal("0.0254")),
    "foot": _Counterpart("imperial", "m", Decimal("0.3048")),
    "millimeter": _Counterpart("metric", "in", 1 / Decimal("25.4")),
    "centimeter": _Counterpart("metric", "in", 1 / Decimal("2.54")),
    "degF": _Counterpart("imperial", "°C", 1 / Decimal("1.8"), Decimal(-32) / Decimal("1.8")),
    "degC": _Counterpart("metric", "°F", Decimal("1.8"), Decimal(32)),
}


def system_of(measure: Measure) -> System | None:
    """The system that the figure's unit belongs to; null for units that both share, such as percent."""
    known = _COUNTERPARTS.get(measure.unit or "")
    return known.system if known else None


def in_other_units(measure: Measure) -> str | None:
    """The figure in the other system, rounded; null where there is nothing to convert."""
    known = _COUNTERPARTS.get(measure.unit or "")
    if known is None:
        return None
    ends = (measure.low, measure.high) if measure.low is not None and measure.high is not None else (measure.value,)
    offset = Decimal(0) if measure.difference else known.offset
    figures = [_three_digits(Decimal(repr(end)) * known.factor + offset) for end in ends if end is not None]
    return f"{' to '.join(figures)}\N{NO-BREAK SPACE}{known.symbol}"


def _three_digits(value: Decimal) -> str:
    places = max(2 - value.adjusted(), 0) if value else 0
    return f"{value.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_EVEN):f}"
