"""The verdict on two figures for one thing: printed statements, published examples and what holds for any figures."""

from __future__ import annotations

import tomllib
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from extract.checks.agreement import agreement
from extract.checks.figure import Figure, parse_figure
from extract.checks.linear import Linear, conversion
from extract.checks.rounding import round_converted
from extract.rounding import to_step


def _figure(text: str) -> Figure:
    return parse_figure(text.removeprefix("about "), hedged=text.startswith("about "))


def _rows() -> list[object]:
    sets = tomllib.loads((Path(__file__).parent / "printed.toml").read_text(encoding="utf-8"))["set"]
    return [
        pytest.param(*row[1:], id=f"{row[0]} {row[1]} {row[2]} - {row[3]} {row[4]}")
        for one in sets
        for row in one["rows"]
    ]


@pytest.mark.parametrize(("first", "unit", "second", "second_unit", "verdict"), _rows())
def test_printed_pairs_get_the_verdict_that_is_due(
    first: str, unit: str, second: str, second_unit: str, verdict: str
) -> None:
    convert = conversion(unit, second_unit)
    assert convert is not None
    assert agreement(_figure(first), _figure(second), convert) == verdict


# NIST SP 811 (2008) B.7.1, its own examples.
@pytest.mark.parametrize(
    ("value", "step", "rounded"),
    [
        ("6.9749515", "0.000001", "6.974952"),
        ("6.9749505", "0.000001", "6.974950"),
        ("6.9749515", "0.01", "6.97"),
        ("6.9749515", "0.0001", "6.9750"),
        ("6.9749515", "0.1", "7.0"),
        ("628.65", "0.1", "628.6"),
        ("190.5", "1", "190"),
    ],
)
def test_half_a_step_goes_to_the_even_digit(value: str, step: str, rounded: str) -> None:
    assert to_step(Fraction(value), Fraction(step)) == Fraction(rounded)


# NIST SP 1038 (2006) section 4.4: the rule; NIST SP 811 B.7.2: 36 ft. The rest is the rule worked out.
@pytest.mark.parametrize(
    ("said", "unit", "to", "rounded"),
    [
        ("36", "foot", "meter", "11.0"),
        ("8", "foot", "meter", "2.4"),
        ("36", "inch", "centimeter", "91"),
        ("40.1", "inch", "centimeter", "101.9"),
        ("7 1/2", "inch", "millimeter", "190"),
        ("16", "inch", "millimeter", "410"),
        ("24", "inch", "millimeter", "610"),
        ("25.5", "inch", "millimeter", "648"),
        ("24.75", "inch", "millimeter", "628.6"),
        ("25.4", "inch", "millimeter", "645"),
        ("12.8", "inch", "millimeter", "325"),
        ("0.010", "inch", "millimeter", "0.25"),
        ("0.012", "inch", "millimeter", "0.30"),
        ("0.090", "inch", "millimeter", "2.29"),
        ("0.156", "inch", "millimeter", "3.96"),
        ("150", "pound", "kilogram", "68.0"),
        ("53", "foot * pound_force", "newton * meter", "72"),
        ("12", "foot", "meter", "3.7"),
    ],
)
def test_a_conversion_keeps_the_digits_that_were_said(said: str, unit: str, to: str, rounded: str) -> None:
    convert = conversion(unit, to)
    assert convert is not None
    figure = parse_figure(said)
    assert round_converted(figure, convert(figure.value)) == Fraction(rounded)


# Exact by definition: NIST SP 811 (2008) appendix B.8; a temperature interval has no offset.
@pytest.mark.parametrize(
    ("unit", "to", "value", "exact", "difference"),
    [
        ("inch", "millimeter", 1, "25.4", False),
        ("foot", "meter", 1, "0.3048", False),
        ("thou", "millimeter", 1, "0.0254", False),
        ("pound", "kilogram", 1, "0.45359237", False),
        ("ounce", "gram", 1, "28.349523125", False),
        ("fluid_ounce", "milliliter", 1, "29.5735295625", False),
        ("degF", "degC", 212, "100", False),
        ("degF", "degC", -40, "-40", False),
        ("degF", "degC", 18, "10", True),
    ],
)
def test_factors_are_exact(unit: str, to: str, value: int, exact: str, difference: bool) -> None:
    convert = conversion(unit, to, difference)
    assert convert is not None
    assert convert(Fraction(value)) == Fraction(exact)


def test_units_of_different_kinds_have_no_conversion() -> None:
    assert conversion("inch", "gram") is None
    assert conversion("inch", "no such unit") is None


# NIST SP 1038 (2006) section 4.4: a clearance of 10 ft is 3.05 m, not 3 m.
@pytest.mark.parametrize(("metres", "verdict"), [("3.05", "agrees"), ("3", "disagrees"), ("3.0", "disagrees")])
def test_a_limit_is_never_rounded_to_the_unsafe_side(metres: str, verdict: str) -> None:
    convert = conversion("foot", "meter")
    assert convert is not None
    assert agreement(parse_figure("10"), parse_figure(metres), convert, limit="at_least") == verdict


@pytest.mark.parametrize("text", ["", "inch", "-", "about 3"])
def test_a_text_without_a_figure_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="no figure"):
        parse_figure(text)


_PAIRS = [
    ("inch", "millimeter"),
    ("foot", "inch"),
    ("thou", "millimeter"),
    ("pound", "kilogram"),
    ("inch * pound_force", "newton * meter"),
    ("psi", "bar"),
    ("fluid_ounce", "milliliter"),
]


@st.composite
def _figures(draw: st.DrawFn) -> Figure:
    if draw(st.booleans()):
        bottom = draw(st.sampled_from([2, 3, 4, 8, 16, 32, 64]))
        return Figure(
            Fraction(draw(st.integers(1, 40 * bottom)), bottom), Fraction(1, bottom), True, draw(st.booleans())
        )
    decimals = draw(st.integers(0, 4))
    return Figure(
        Fraction(draw(st.integers(1, 9999)), 10**decimals), Fraction(1, 10**decimals), False, draw(st.booleans())
    )


@st.composite
def _conversions(draw: st.DrawFn) -> Linear:
    pair = draw(st.sampled_from(_PAIRS))
    found = conversion(*(pair if draw(st.booleans()) else pair[::-1]))
    assert found is not None
    return found


@given(first=_figures(), convert=_conversions(), hedged=st.booleans())
def test_an_exact_conversion_always_agrees(first: Figure, convert: Linear, hedged: bool) -> None:
    exact = convert(first.value)
    second = Figure(exact, Fraction(1, exact.denominator), False, hedged)
    assert agreement(first, second, convert) == "agrees"
    assert agreement(second, first, convert.inverse) == "agrees"


@given(first=_figures(), convert=_conversions(), hedged=st.booleans())
def test_the_published_rounding_always_agrees(first: Figure, convert: Linear, hedged: bool) -> None:
    rounded = round_converted(first, convert(first.value))
    step = Fraction(1, 10 ** max(0, len(str(rounded.denominator)) - 1))
    assert agreement(first, Figure(rounded, step, False, hedged), convert) == "agrees"


@given(first=_figures(), convert=_conversions(), second=_figures(), power=st.sampled_from([-2, -1, 1, 2]))
def test_a_factor_of_ten_never_agrees(first: Figure, convert: Linear, second: Figure, power: int) -> None:
    wrong = Figure(convert(first.value) * Fraction(10) ** power, second.step, second.fraction, second.hedged)
    if wrong.value >= wrong.step:
        assert agreement(first, wrong, convert) == "disagrees"


@given(first=_figures(), convert=_conversions(), second=_figures(), places=st.integers(-3, 3))
def test_the_verdict_knows_no_scale(first: Figure, convert: Linear, second: Figure, places: int) -> None:
    """The same digits in metres and in millimetres get the same verdict where they are said to the same place."""
    if first.fraction or second.fraction or first.hedged or second.hedged:
        return
    scale = Fraction(10) ** places
    moved = Figure(second.value * scale, second.step * scale)
    assert agreement(first, second, convert) == agreement(first, moved, Linear(convert.factor * scale))


@given(first=_figures(), second=_figures(), convert=_conversions())
def test_a_hedge_never_makes_it_worse(first: Figure, second: Figure, convert: Linear) -> None:
    order = ["agrees", "close", "disagrees"]
    plain = Figure(first.value, first.step, first.fraction), Figure(second.value, second.step, second.fraction)
    hedged = plain[0], Figure(second.value, second.step, second.fraction, True)
    assert order.index(agreement(*hedged, convert)) <= order.index(agreement(*plain, convert))
