"""Figures in the other system of units, against published conversions."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from extract.convert import (
    Precision,
    in_other_system,
    nearest_fraction,
    other_unit,
    precision_of,
    quantity_in_other_system,
)
from extract.spans import Number, Quantity
from extract.units import UnitError, unit_data, unit_named
from tests.extract.units.tables import rows


def number(value: str, form: str = "integer", denominator: int | None = None, decimals: int | None = None) -> Number:
    return Number(0, 1, Fraction(value), form, denominator=denominator, decimals=decimals)  # type: ignore[arg-type]


def quantity(said: Number, unit: str, *, low: str = "", high: str = "", difference: bool = False) -> Quantity:
    first, last = (Fraction(low), Fraction(high)) if low else (None, None)
    return Quantity(0, 2, said.value, first, last, unit_named(unit), True, said, difference=difference)


def plain(text: str | None) -> str:
    return (text or "").replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize(("value", "unit", "step", "other", "shown"), rows(Path(__file__).parent / "converted.txt"))
def test_published_conversions(value: str, unit: str, step: str, other: str, shown: str) -> None:
    precision = Precision(Fraction(step), decimal="/" not in step)
    assert plain(in_other_system(Fraction(value), unit, precision, other)) == shown


@pytest.mark.parametrize(
    ("said", "hedged", "step"),
    [
        (number("24"), False, "1"),
        (number("250"), True, "10"),
        (number("250"), False, "1"),
        (number("0.012", "decimal", decimals=3), False, "1/1000"),
        (number("5/64", "fraction", 64), False, "1/128"),
        (number("15/2", "mixed", 2), False, "1/4"),
    ],
)
def test_how_precisely_a_number_was_said(said: Number, hedged: bool, step: str) -> None:
    assert precision_of(said, hedged).step == Fraction(step)


def test_ranges_keep_both_ends() -> None:
    said = quantity(number("5/2"), "thou", low="2", high="3")
    assert plain(quantity_in_other_system(said)) == "0.051 to 0.076 mm"


# 1 in is 25.4 mm exactly (NIST SP 811, appendix B.8): 3 mm is 0.118 in, 5 mm 0.197 in; 1/8 in is 0.125, 3/16 in 0.1875.
@pytest.mark.parametrize(
    ("low", "high", "expected"),
    [
        ("3", "5", "0.12 to 0.20 in (1/8 to 3/16 in)"),
        ("25", "51", "0.98 to 2.01 in (1 to 2 in)"),
        ("0.1", "5", "0.0039 to 0.197 in"),
        ("3", "3.1", "0.118 to 0.122 in"),
    ],
)
def test_a_range_in_inches_has_the_fractions_of_both_ends_or_none(low: str, high: str, expected: str) -> None:
    places = len(low.partition(".")[2] or high.partition(".")[2])
    middle = str((Fraction(low) + Fraction(high)) / 2)
    said = number(middle, "decimal", decimals=places) if places else number(middle)
    assert plain(quantity_in_other_system(quantity(said, "millimeter", low=low, high=high))) == expected


def test_a_difference_of_temperature_has_no_offset() -> None:
    assert plain(quantity_in_other_system(quantity(number("18"), "degF", difference=True))) == "10 °C"


def test_units_of_both_systems_are_left_alone() -> None:
    assert other_unit("volt") is None
    assert in_other_system(Fraction(10), "volt", Precision(Fraction(1))) is None
    assert quantity_in_other_system(quantity(number("3"), "minute")) is None


def test_other_kinds_are_refused() -> None:
    with pytest.raises(UnitError):
        in_other_system(Fraction(10), "inch", Precision(Fraction(1)), "gram")


@given(st.integers(min_value=1, max_value=640))
def test_the_nearest_fraction_of_a_sixty_fourth_is_itself(count: int) -> None:
    value = Fraction(count, 64)
    written = nearest_fraction(value, Fraction(0))
    assert written is not None
    assert sum(Fraction(part) for part in written.split()) == value


@given(st.sampled_from(sorted(unit_data()["other"])), st.integers(min_value=1, max_value=9999))
def test_every_conversion_shows_a_figure_and_a_symbol(unit: str, value: int) -> None:
    shown = in_other_system(Fraction(value), unit, Precision(Fraction(1)))
    assert shown is not None
    figure, symbol = plain(shown).split(" ", 1)
    float(figure)
    assert symbol
