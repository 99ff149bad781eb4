"""How a span of figures is written in a message, so that a person can act on it.

Takes 0.01 to 1 mm for "three feet" of paper as "0.39 to 39 thou", since nobody measures 0.0000328 ft; keeps "1.6 to
3.2 mm" for a figure said in millimetres. NIST SP 811 (2008) section 7.9 asks for a prefix by which values lie between
0.1 and 1000; more is let pass here, so that the unit said is kept where it can be: the bounds are our own.
"""

from __future__ import annotations

import tomllib
from fractions import Fraction
from functools import cache
from importlib.resources import files

from extract.checks.finding import figure_text, symbol_of, with_unit
from extract.checks.linear import conversion
from extract.record import Measure
from extract.units import unit_named

_MOST = Fraction(10_000)
_LONGEST = 6
"""Signs of a figure that can still be read at a glance: 0.0005, but not 0.00787."""
_ROUGH = 2
"""Digits of an end that was worked out in a unit nobody said."""


def span_text(low: float, high: float, unit: str, measure: Measure) -> str:
    """`low` to `high`, given in `unit`, in the unit in which a figure was said, or another one of its system.

    Where the figure has no unit, in the span's own.
    """
    ends = [Fraction(end).limit_denominator(10**9) for end in (low, high)]
    said = measure.unit or unit
    there = _in(ends, unit, said)
    if _are_plain(there):
        return with_unit(" to ".join(map(figure_text, there)), symbol_of(measure))
    for other in _kin(said):
        there = _in(ends, unit, other)
        if _are_plain(there):
            return with_unit(" to ".join(figure_text(end, _ROUGH) for end in there), unit_named(other).symbol)
    return " to ".join(_nearest(end, unit, said) for end in ends)


def _in(ends: list[Fraction], unit: str, other: str) -> list[Fraction]:
    convert = conversion(unit, other)
    return [] if convert is None else [convert(end) for end in ends]


def _are_plain(ends: list[Fraction]) -> bool:
    return bool(ends) and all(abs(end) < _MOST and len(figure_text(abs(end))) <= _LONGEST for end in ends)


def _nearest(end: Fraction, unit: str, said: str) -> str:
    """One end in the first unit of its own that suits it: "20 kHz"; else in the one said."""
    for other in (said, *_kin(said)):
        there = _in([end], unit, other)
        if _are_plain(there):
            return with_unit(figure_text(there[0], _ROUGH), unit_named(other).symbol)
    return with_unit(figure_text(end), unit_named(unit).symbol)


def _kin(unit: str) -> tuple[str, ...]:
    """The other units of the same scale, the nearest in size first."""
    scale = next((row for row in _scales() if unit in row), ())
    at = scale.index(unit) if scale else 0
    return tuple(sorted((other for other in scale if other != unit), key=lambda other: abs(scale.index(other) - at)))


@cache
def _scales() -> tuple[tuple[str, ...], ...]:
    data = tomllib.loads((files("extract") / "data" / "checks.toml").read_text(encoding="utf-8"))
    return tuple(tuple(row) for row in data["scales_of_units"]["rows"])
