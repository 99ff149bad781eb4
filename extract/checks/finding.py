"""What a rule hands back, and how figures are written in its message."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from extract.checks.figure import Figure, decimal_step
from extract.record import Measure, Severity
from extract.rounding import leading_power, to_step


@dataclass(frozen=True, slots=True)
class Suspicion:
    """A statement that a rule doubts; the last of `measures` is where it was said."""

    kind: str
    severity: Severity
    measures: tuple[Measure, ...]
    message: str
    source: str


_SYMBOL = re.compile(r"[\d/.]\s*([^\d\s/.][^\d]*)$")


def symbol_of(measure: Measure) -> str:
    """The unit's symbol as it stands in the display, without the figure."""
    found = _SYMBOL.search(measure.display)
    return found[1].strip() if found else ""


def decimal(value: Fraction, step: Fraction) -> str:
    """A value as a decimal rounded to a step: "609.6", "0.28"; a coarser step keeps its zeros: "610"."""
    power = decimal_step(min(step, Fraction(1)))
    rounded = to_step(value, max(step, power))
    places = max(0, len(str(power.denominator)) - 1)
    return f"{float(rounded):.{places}f}"


def like(value: Fraction, said: Figure) -> str:
    """A value in the form of a figure: "1/32" beside "3/32", three digits beside a decimal."""
    whole, rest = divmod(abs(value), 1)
    if not said.fraction or rest == 0 or rest.denominator not in (2, 4, 8, 16, 32, 64):
        return figure_text(value)
    sign = "-" if value < 0 else ""
    return f"{sign}{whole} {rest}" if whole else f"{sign}{rest}"


def figure_text(value: Fraction, digits: int = 3) -> str:
    """A value to so many significant digits, without trailing zeros behind the point."""
    if value == 0:
        return "0"
    step = Fraction(10) ** (leading_power(value) - digits + 1)
    text = decimal(value, min(step, Fraction(1)))
    return text.rstrip("0").rstrip(".") if "." in text else text


def with_unit(figure: str, symbol: str) -> str:
    """A figure and its unit's symbol, with the space that keeps them together."""
    if not symbol:
        return figure
    return f"{figure}{symbol}" if symbol == "°" else f"{figure}\N{NO-BREAK SPACE}{symbol}"
