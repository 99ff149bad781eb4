"""Slips of the tongue and of the ear that put a figure out of all proportion, the likeliest first.

Each gives what would have been meant, or None where the figure isn't of the kind that slips that way.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from extract.checks.finding import figure_text, like, symbol_of, with_unit
from extract.checks.talk import Said
from extract.units import system_of, unit_named

_TWINS = {
    "inch": ("millimeter", "centimeter"),
    "foot": ("inch",),
    "millimeter": ("inch", "thou", "centimeter"),
    "centimeter": ("millimeter", "inch"),
    "meter": ("millimeter", "centimeter"),
    "degF": ("degC",),
    "degC": ("degF",),
    "volt": ("millivolt",),
    "millivolt": ("volt",),
    "ampere": ("milliampere",),
    "milliampere": ("ampere", "microampere"),
    "ohm": ("kiloohm",),
    "kiloohm": ("ohm", "megaohm"),
    "microfarad": ("picofarad", "nanofarad"),
    "picofarad": ("microfarad",),
    "nanofarad": ("picofarad", "microfarad"),
    "pound": ("ounce", "gram"),
    "kilogram": ("gram", "pound"),
    "gram": ("kilogram",),
    "hour": ("minute",),
    "minute": ("second", "hour"),
    "second": ("millisecond", "minute"),
    "millisecond": ("second",),
    "newton * meter": ("inch * force_pound",),
    "foot_pound": ("inch * force_pound",),
    "inch * force_pound": ("newton * meter", "foot_pound"),
    "bar": ("psi",),
    "psi": ("bar",),
}
"""Units that are said one for the other."""


_HALVES = 13
"""Halves of a millimetre are said of small things only."""


@dataclass(frozen=True, slots=True)
class Meant:
    """What may have been meant."""

    value: Fraction
    unit: str
    text: str
    reason: str
    other_unit: bool = False
    """The slip is in the unit alone: where the unit was not said, it may be ours."""


def thousandths(one: Said) -> Meant | None:
    """ "twelve sixty-fourths" for 12 thou: the count is right, the denominator is not."""
    figure = one.figure
    if not figure.fraction or one.measure.unit != "inch" or figure.step.denominator not in (16, 32, 64):
        return None
    count = figure.value / figure.step
    return Meant(count, "thou", with_unit(str(count), "thou"), "thousandths were meant")


def sixty_fourths(one: Said) -> Meant | None:
    """ "seven thou" for 7/64 in."""
    figure = one.figure
    if one.measure.unit != "thou" or figure.value.denominator != 1 or figure.value >= 64:
        return None
    value = figure.value / 64
    return Meant(value, "inch", with_unit(f"{figure.value}/64", "in"), "64ths were meant")


def _denominator(one: Said, said: int, meant: int, name: str) -> Meant | None:
    figure = one.figure
    if not figure.fraction or one.measure.unit != "inch" or figure.step != Fraction(1, said):
        return None
    count = figure.value * said
    return Meant(count / meant, "inch", with_unit(f"{count}/{meant}", "in"), f"{name} were meant")


def finer_fraction(one: Said) -> Meant | None:
    """ "nine sixteenths" for 9/64 in."""
    return _denominator(one, 16, 64, "64ths") or _denominator(one, 16, 32, "32nds")


def coarser_fraction(one: Said) -> Meant | None:
    """ "nine sixty-fourths" for 9/16 in."""
    return _denominator(one, 64, 16, "16ths") or _denominator(one, 32, 16, "16ths")


def _tens(one: Said, factor: Fraction, reason: str) -> Meant | None:
    measure, value = one.measure, one.figure.value * factor
    if measure.unit is None or one.figure.fraction:
        return None
    return Meant(value, measure.unit, with_unit(figure_text(value), symbol_of(measure)), reason)


def zero_too_many(one: Said) -> Meant | None:
    """ "63 volts" for 6.3 V."""
    return _tens(one, Fraction(1, 10), "it is ten times too much")


def zero_too_few(one: Said) -> Meant | None:
    """ "35 volts" for 350 V."""
    return _tens(one, Fraction(10), "it is ten times too little")


def two_zeros_too_many(one: Said) -> Meant | None:
    """ "12 millimetres" for 0.12 mm."""
    return _tens(one, Fraction(1, 100), "it is a hundred times too much")


def two_zeros_too_few(one: Said) -> Meant | None:
    """ "3.5 volts" for 350 V."""
    return _tens(one, Fraction(100), "it is a hundred times too little")


def _other_unit(one: Said, place: int) -> Meant | None:
    twins = _TWINS.get(one.measure.unit or "", ())
    if place >= len(twins):
        return None
    unit = unit_named(twins[place])
    value = one.figure.value
    if one.figure.fraction and system_of(unit) == "metric" and not _is_said_in_metric(one, unit.name):
        return None
    return Meant(value, unit.name, with_unit(like(value, one.figure), unit.symbol), f"{unit.symbol} was meant", True)


def _is_said_in_metric(one: Said, unit: str) -> bool:
    """People say "two and a half millimetres", never a quarter of one, and no fraction of a centimetre."""
    return unit == "millimeter" and one.figure.step == Fraction(1, 2) and one.figure.value < _HALVES


SLIPS: tuple[Callable[[Said], Meant | None], ...] = (
    thousandths,
    sixty_fourths,
    finer_fraction,
    coarser_fraction,
    zero_too_many,
    lambda one: _other_unit(one, 0),
    zero_too_few,
    lambda one: _other_unit(one, 1),
    lambda one: _other_unit(one, 2),
    two_zeros_too_many,
    two_zeros_too_few,
)
"""In order; the first that leads into the band is named."""
