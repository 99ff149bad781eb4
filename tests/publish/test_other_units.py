"""Figures of a record in the other system of units."""

from __future__ import annotations

from typing import Any

import pytest

from publish.other_units import in_other_units, system_of
from tests.publish.test_figures import a_measure


@pytest.mark.parametrize(
    ("display", "value", "unit", "other"),
    [
        # NIST SP 1038 (2006), section 4.4: the worked examples of the rule for significant digits.
        ("36 ft", 36, "foot", "11.0 m"),
        ("8 ft", 8, "foot", "2.4 m"),
        # NIST LC 1137, Metric Style Guide, which prints it as 91 cm.
        ("36 in", 36, "inch", "910 mm"),
        # An inch is 25.4 mm exactly: 24 Fed. Reg. 5348 (1959); rounded by the rule above.
        ("0.012 in", 0.012, "inch", "0.30 mm"),
        ("0.090 in", 0.09, "inch", "2.29 mm"),
        ("24.75 in", 24.75, "inch", "628.6 mm"),
        # C = (F - 32) / 1.8, exactly: NIST SP 811 (2008), B.8.
        ("140 °F", 140, "degF", "60 °C"),
        ("100 °C", 100, "degC", "212 °F"),
    ],
)
def test_published_conversions(display: str, value: float, unit: str, other: str) -> None:
    said = a_measure(display.replace(" ", "\u00a0"), value, unit)
    assert (in_other_units(said) or "").replace("\u00a0", " ") == other


@pytest.mark.parametrize(
    ("display", "value", "more", "other"),
    [
        ("5/64 in", 0.078125, {}, "2.0 mm"),
        ("2 to 3 thou", 2.5, {"unit": "thou", "low": 2, "high": 3}, "0.051 to 0.076 mm"),
        ("at most", 140, {"unit": "degF", "limit": "at_most"}, "at most 60 °C"),
        ("18 °F", 18, {"unit": "degF", "difference": True}, "10 °C"),
    ],
)
def test_fractions_ranges_limits_and_differences(display: str, value: float, more: dict[str, Any], other: str) -> None:
    said = a_measure(display.replace(" ", "\u00a0"), value, **more)
    assert (in_other_units(said) or "").replace("\u00a0", " ") == other


@pytest.mark.parametrize(
    ("display", "value", "other"),
    [
        # 1 in = 25.4 mm exactly (24 Fed. Reg. 5348, 1959), so 2.54 mm is 0.1 in; 3/32 in is 0.09375 in.
        ("2.54 mm", 2.54, "0.1000 in (3/32 in and 0.0063 in)"),
        ("3.00 mm", 3.0, "0.1181 in (1/8 in less 0.0069 in)"),
        # 15 mm = 0.59055 in, 19/32 in = 0.59375 in: nearer than half a millimetre.
        ("15 mm", 15, "0.59 in (19/32 in)"),
        ("25.4 mm", 25.4, "1.000 in (1 in)"),
    ],
)
def test_a_fraction_tells_its_error_where_the_figure_was_said_more_exactly(
    display: str, value: float, other: str
) -> None:
    said = a_measure(display.replace(" ", "\u00a0"), value, "millimeter")
    assert (in_other_units(said) or "").replace("\u00a0", " ") == other


@pytest.mark.parametrize("unit", ["percent", "volt", "minute", "furlongs of old", None])
def test_what_both_systems_share_is_left_alone(unit: str | None) -> None:
    said = a_measure("48", 48, unit)
    assert in_other_units(said) is None
    assert system_of(said) is None
