"""A figure in the other system of units, rounded by the published rules.

NIST SP 811 (2008) B.7.1: less than half is dropped, more is carried, exactly half goes to the even digit.
NIST SP 1038 (2006) section 4.4: a converted figure keeps as many significant digits as were said, and one more where
its first digit is smaller than the first digit said: 36 ft is 11.0 m, 24 in is 610 mm.

The project's own choices, which no source prints: a fraction is taken to be good to half of its last denominator; a
figure never keeps fewer than two significant digits (an inch is 25 mm, not 30); whole degrees give whole degrees;
noughts that end a hedged whole number do not count as digits.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from extract.rounding import first_digit, leading_power, to_step
from extract.spans import Number, Quantity, Unit
from extract.units import interval_to_unit, to_unit, unit_data, unit_named

_FEWEST_DIGITS = 2
_FINEST_FRACTION = 64
_NO_BREAK_SPACE = "\N{NO-BREAK SPACE}"


@dataclass(frozen=True, slots=True)
class Precision:
    """How precisely a figure was said: to a step such as 1, 1/10 or 1/128, in its own unit."""

    step: Fraction
    decimal: bool = True
    """False for a fraction, whose step is no power of ten."""


def precision_of(number: Number, hedged: bool = False) -> Precision:
    """The step to which a number was said: 0.001 for "0.012", 1 for "24", 10 for "about 250", 1/128 for "5/64"."""
    if number.form in ("fraction", "mixed"):
        return Precision(Fraction(1, 2 * (number.denominator or number.value.denominator)), decimal=False)
    if number.decimals:
        return Precision(Fraction(1, 10**number.decimals))
    step = Fraction(1)
    while hedged and number.value and number.value % (step * 10) == 0:
        step *= 10
    return Precision(step)


def other_unit(unit: Unit | str) -> Unit | None:
    """The other system's unit for a unit, None where both systems share it."""
    name = unit_data()["other"].get(unit if isinstance(unit, str) else unit.name)
    return unit_named(name) if name else None


@lru_cache(maxsize=1 << 12)
def in_other_system(
    value: Fraction, unit: Unit | str, precision: Precision, target: Unit | str | None = None, interval: bool = False
) -> str | None:
    """`value` of `unit` in the other system ("2.29 mm"), or in `target`; None where there is no other unit.

    A length in inches is given as a decimal and as the nearest sensible fraction: "0.094 in (3/32 in)". `interval`
    marks a difference, which for a temperature has no offset. Raises `UnitError` where `target` measures something
    else.
    """
    there = unit_named(target) if isinstance(target, str) else target or other_unit(unit)
    if there is None:
        return None
    convert = interval_to_unit if interval else to_unit
    exact = convert(value, unit, there)
    step = _converted_step(value, exact, precision, there, interval_to_unit(precision.step, unit, there))
    shown = f"{_written(to_step(exact, step), step)}{_NO_BREAK_SPACE}{there.symbol}"
    if there.name != "inch":
        return shown
    part = nearest_fraction(exact, interval_to_unit(precision.step, unit, there) / 2)
    return f"{shown} ({part}{_NO_BREAK_SPACE}{there.symbol})" if part and part != _written(exact, step) else shown


def quantity_in_other_system(quantity: Quantity) -> str | None:
    """A quantity in the other system, a range with both ends: "0.05 to 0.08 mm", "0.12 to 0.20 in (1/8 to 3/16 in)"."""
    if quantity.unit is None:
        return None
    precision = precision_of(quantity.number, quantity.hedged)
    ends = (quantity.value,) if quantity.low is None or quantity.high is None else (quantity.low, quantity.high)
    shown = [in_other_system(end, quantity.unit, precision, interval=quantity.difference) for end in ends]
    if any(one is None for one in shown):
        return None
    texts = [one for one in shown if one]
    if len(texts) == 1 or texts[0] == texts[-1]:
        return texts[-1]
    return _from_to(texts[0].partition(" ("), texts[1].partition(" ("))


def _from_to(low: tuple[str, str, str], high: tuple[str, str, str]) -> str:
    """A range from both ends, each cut before the bracket of its fraction; one fraction alone would be of neither."""
    told = f"{low[0].split(_NO_BREAK_SPACE)[0]} to {high[0]}"
    if not low[2] or not high[2] or low[2] == high[2]:
        return told
    return f"{told} ({low[2].split(_NO_BREAK_SPACE)[0]} to {high[2]}"


def nearest_fraction(value: Fraction, within: Fraction) -> str | None:
    """The coarsest fraction down to sixty-fourths within `within` of `value`, else the nearest sixty-fourth: "1 3/8".

    None where that would be nothing.
    """
    below = 2
    while below < _FINEST_FRACTION and abs(to_step(value, Fraction(1, below)) - value) > within:
        below *= 2
    nearest = to_step(value, Fraction(1, below))
    whole, rest = divmod(abs(nearest), 1)
    if nearest == 0:
        return None
    sign = "-" if nearest < 0 else ""
    part = f"{rest.numerator}/{rest.denominator}" if rest else ""
    return sign + " ".join(text for text in (str(whole) if whole else "", part) if text)


def _converted_step(value: Fraction, exact: Fraction, precision: Precision, there: Unit, slack: Fraction) -> Fraction:
    """The power of ten to which the converted figure is rounded."""
    if there.kind == "temperature":
        return min(Fraction(1), precision.step)
    if exact == 0 or value == 0:
        return _power_below(slack)
    finest = Fraction(10) ** (leading_power(exact) - _FEWEST_DIGITS + 1)
    if not precision.decimal:
        return min(_power_below(slack), finest)
    digits = leading_power(value) - leading_power(precision.step) + 1
    if first_digit(exact) < first_digit(value):
        digits += 1
    return min(Fraction(10) ** (leading_power(exact) - digits + 1), finest)


def _power_below(value: Fraction) -> Fraction:
    return Fraction(10) ** leading_power(value)


def _written(value: Fraction, step: Fraction) -> str:
    """A value that is a multiple of a power of ten, with the decimals that the step calls for."""
    places = max(0, -leading_power(step))
    scaled = round(value * 10**places)
    sign, digits = ("-" if scaled < 0 else ""), f"{abs(scaled):0{places + 1}d}"
    return sign + (f"{digits[:-places]}.{digits[-places:]}" if places else digits)
