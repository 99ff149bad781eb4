"""Figures written the way they were said."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from extract.spans import Number, Quantity, Unit
from extract.units import to_unit, unit_data, unit_named

_NO_BREAK_SPACE = "\N{NO-BREAK SPACE}"
_MOST_PLACES = 6


def show_number(value: Fraction, number: Number) -> str:
    """A figure in the form of `number`: 1 3/8 for a mixed one, 0.012 for a decimal with three places.

    A fraction keeps the denominator that was said where it still fits.
    """
    if number.form in ("fraction", "mixed"):
        return _show_fraction(value, number.denominator)
    return _show_decimal(value, number.decimals)


def _show_fraction(value: Fraction, denominator: int | None) -> str:
    sign, (whole, rest) = ("-" if value < 0 else ""), divmod(abs(value), 1)
    if rest == 0:
        return f"{sign}{whole}"
    below = denominator if denominator and (rest * denominator).denominator == 1 else rest.denominator
    part = f"{int(rest * below)}/{below}"
    return f"{sign}{whole} {part}" if whole else f"{sign}{part}"


def _show_decimal(value: Fraction, decimals: int | None) -> str:
    """A decimal with the places that were said, or as many as it needs, exactly; ties go to the even digit."""
    places = decimals or 0
    while decimals is None and places < _MOST_PLACES and (value * 10**places).denominator != 1:
        places += 1
    scaled = round(value * 10**places)
    sign, digits = ("-" if scaled < 0 else ""), f"{abs(scaled):0{places + 1}d}"
    return sign + (f"{digits[:-places]}.{digits[-places:]}" if places else digits)


def show(quantity: Quantity) -> str:
    """A quantity with its unit's symbol, as it was said: "2 to 3 thou", "3 ft 1 1/4 in", "24 mm \u00b1 1 mm"."""
    unit, number = quantity.unit, quantity.number
    if quantity.low is not None and quantity.high is not None:
        plain = replace(number, denominator=None)  # each end by itself: "1/4 to 1/2", not "1/4 to 2/4"
        ends = (show_number(end, plain) for end in (quantity.low, quantity.high))
        shown = with_symbol(" to ".join(ends), unit, quantity.high)
    elif number.large is not None and number.large_unit and unit:
        shown = _show_compound(quantity.value, number, unit)
    else:
        shown = with_symbol(show_number(quantity.value, number), unit, quantity.value)
    if quantity.tolerance is None:
        return shown
    slack = Number(number.start, number.end, quantity.tolerance, number.form, denominator=number.denominator)
    return f"{shown} \u00b1 {with_symbol(show_number(quantity.tolerance, slack), unit, quantity.tolerance)}"


def _show_compound(value: Fraction, number: Number, unit: Unit) -> str:
    """ "4 lb 12 oz" of what is 4.75 lb: the larger part, and the rest in the smaller unit."""
    large = unit_named(number.large_unit or unit.name)
    small = next(row["small"] for row in unit_data()["compound"] if row["large"] == large.name)
    rest = to_unit(value, unit, small) - to_unit(number.large or Fraction(0), large, small)
    first = with_symbol(_show_decimal(number.large or Fraction(0), None), large, number.large or Fraction(0))
    return f"{first} {with_symbol(show_number(rest, number), unit_named(small), rest)}"


def with_symbol(figure: str, unit: Unit | None, value: Fraction) -> str:
    """A written figure with its unit's symbol; words such as "turn" and "cent" take a plural, a bare ° no space.

    NIST SP 811 (2008) 7.2: a space stands between figure and symbol, but for the degree of angle.
    """
    if unit is None or not unit.symbol:
        return figure
    if unit.symbol == "\N{DEGREE SIGN}":
        return f"{figure}{unit.symbol}"
    plural = "s" if unit.symbol in unit_data()["plurals"]["symbols"] and abs(value) > 1 else ""
    return f"{figure}{_NO_BREAK_SPACE}{unit.symbol}{plural}"
