"""Rounding by the published rules: to a step, and by the place of the first significant digit.

Source: NIST SP 811 (2008) B.7.1, ties to the even digit.
"""

from __future__ import annotations

from fractions import Fraction


def to_step(value: Fraction, step: Fraction) -> Fraction:
    """`value` to the nearest multiple of `step`, ties to the even multiple."""
    return round(value / step) * step


def leading_power(value: Fraction) -> int:
    """The power of ten of the first significant digit: 2 for 610, -2 for 0.012. `value` isn't zero."""
    whole = abs(value)
    power = 0
    while whole >= 10:
        whole /= 10
        power += 1
    while whole < 1:
        whole *= 10
        power -= 1
    return power


def first_digit(value: Fraction) -> int:
    """The first significant digit: 6 for 610. `value` isn't zero."""
    return int(abs(value) / Fraction(10) ** leading_power(value))
