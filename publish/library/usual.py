"""The bands of the trades that hold for an attribute of an item.

A band that names the item, or the last words of it ("old mainspring" for "mainspring"), goes before one for all items.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from extract.convert import Precision, in_other_system, other_unit
from extract.trade import Band, load_trade, trade_names
from extract.units import UnitError, to_unit, unit_rows
from publish.context.reference import Usual
from publish.library.works import folded
from publish.written import exact, fineness

_SPACE = "\N{NO-BREAK SPACE}"


def bands_for(trades: Iterable[str], attribute: str, item: str, kind: str) -> tuple[tuple[str, Band], ...]:
    """Each band with the trade that has it, once; a trade that has no file has no bands.

    The attribute goes by any name that the trade has for it; names are compared folded.
    """
    found: dict[Band, str] = {}
    for trade in dict.fromkeys(trades):
        if trade not in trade_names():
            continue
        for one in load_trade(trade).attributes:
            if attribute in one.said and one.kind == kind:
                named = [band for band in one.bands if any(_names(item, name) for name in band.items)]
                for band in named or [band for band in one.bands if not band.items]:
                    found.setdefault(band, trade)
    return tuple((trade, band) for band, trade in found.items())


def usual(trade: str, band: Band) -> Usual:
    """A band in words."""
    row = unit_rows().get(band.unit)
    unit = row.unit.symbol if row else band.unit
    return Usual(f"{band.low:g} to {band.high:g}{_SPACE}{unit}", _other(band), trade, band.source)


def _other(band: Band) -> str:
    """The band in the other system, rounded by the published rule; empty where both systems share its unit."""
    if band.unit not in unit_rows() or other_unit(band.unit) is None:
        return ""
    ends = (band.low, band.high)
    shown = [in_other_system(exact(end), band.unit, _precision(end)) for end in ends]
    low, high = (text.split(" (")[0] for text in shown if text)
    number = low.split(_SPACE)[0]
    return f"{number if float(number) else 0} to {high}"


def _precision(end: float) -> Precision:
    """As finely as the trade's file has it."""
    return Precision(Fraction(1, 10 ** fineness(f"{end:g}").decimals))


def ends_in(band: Band, unit: str) -> tuple[float, float] | None:
    """Both ends of a band in another unit; None where that measures something else."""
    try:
        low, high = (float(to_unit(Fraction(repr(end)), band.unit, unit)) for end in (band.low, band.high))
    except UnitError:
        return None
    return min(low, high), max(low, high)


def _names(item: str, name: str) -> bool:
    words, named = item.split(), folded(name).split()
    return bool(named) and words[-len(named) :] == named
