"""Rounding by the published rules.

NIST SP 811 (2008) B.7.1: less than half a step is dropped, more is carried, exactly half goes to the even digit.
NIST SP 1038 (2006) section 4.4: a converted figure keeps as many significant digits as were said, and one more where
its first digit is smaller than the first digit said. 36 ft is 11.0 m; 24 in is 610 mm.
"""

from __future__ import annotations

from fractions import Fraction

from extract.checks.figure import Figure
from extract.rounding import first_digit, leading_power, to_step


def converted_step(said: Figure, exact: Fraction) -> Fraction:
    """One unit in the last place that a conversion of `said` to `exact` may keep."""
    if said.value == 0 or exact == 0:
        return Fraction(1)
    digits = said.digits + (first_digit(exact) < first_digit(said.value))
    return Fraction(10) ** (leading_power(exact) - digits + 1)


def round_converted(said: Figure, exact: Fraction) -> Fraction:
    """`exact`, the conversion of `said`, rounded by the published rules."""
    return to_step(exact, converted_step(said, exact))
