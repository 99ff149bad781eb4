"""Figures written as people say them to a machine: "406 mm" as "406 millimeters", 3/8 in as "3/8 inch"."""

from __future__ import annotations

from fractions import Fraction

SAID = {
    "inch": "inches",
    "millimeter": "millimeters",
    "centimeter": "centimeters",
    "foot": "feet",
    "thou": "thou",
    "pound": "pounds",
    "kilogram": "kilograms",
    "gram": "grams",
    "ounce": "ounces",
    "degF": "degrees Fahrenheit",
    "degC": "degrees Celsius",
    "newton * meter": "newton meters",
    "foot_pound": "foot-pounds",
    "percent": "percent",
    "volt": "volts",
    "minute": "minutes",
    "hour": "hours",
    "psi": "psi",
    "bar": "bar",
    "liter": "liters",
}
OTHER = {
    "inch": "millimeter",
    "millimeter": "inch",
    "centimeter": "inch",
    "foot": "millimeter",
    "thou": "millimeter",
    "pound": "kilogram",
    "kilogram": "pound",
    "gram": "ounce",
    "ounce": "gram",
    "degF": "degC",
    "degC": "degF",
    "newton * meter": "foot_pound",
    "psi": "bar",
    "bar": "psi",
}
_DIGITS = 3


def said(value: Fraction, unit: str) -> str:
    """A value with its unit, to three significant digits."""
    number = float(f"{float(value):.{_DIGITS}g}")
    text = f"{number:.6f}".rstrip("0").rstrip(".")
    return f"{text} {SAID[unit]}"
