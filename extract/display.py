"""Figures written the way they were said."""

from __future__ import annotations

from fractions import Fraction

from extract.spans import Number, Quantity

_TYPOGRAPHIC_SPACE = "\N{NO-BREAK SPACE}"


def show_number(value: Fraction, number: Number) -> str:
    """A figure in the form of `number`: 1 3/8 for a mixed one, 0.012 for a decimal with three places.

    A fraction keeps the denominator that was said where it still fits.
    """
    if number.form in ("fraction", "mixed"):
        return _show_fraction(value, number.denominator)
    if value.denominator == 1 and not number.decimals:
        return str(value.numerator)
    return f"{float(value):.{number.decimals}f}" if number.decimals else f"{float(value):g}"


def _show_fraction(value: Fraction, denominator: int | None) -> str:
    whole, rest = divmod(value, 1)
    if rest == 0:
        return str(whole)
    below = denominator if denominator and (rest * denominator).denominator == 1 else rest.denominator
    part = f"{int(rest * below)}/{below}"
    return f"{whole} {part}" if whole else part


def show(quantity: Quantity) -> str:
    """A quantity with its unit's symbol, a range with both ends: "2 to 3 thou"."""
    if quantity.low is not None and quantity.high is not None:
        figure = f"{show_number(quantity.low, quantity.number)} to {show_number(quantity.high, quantity.number)}"
    else:
        figure = show_number(quantity.value, quantity.number)
    if quantity.unit is None or not quantity.unit.symbol:
        return figure
    return f"{figure}{_TYPOGRAPHIC_SPACE}{quantity.unit.symbol}"
