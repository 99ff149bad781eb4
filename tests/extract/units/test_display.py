"""Figures are shown in the form they were said in."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from extract.display import show, show_number
from extract.spans import Number
from tests.extract.marked import read
from tests.extract.units.tables import rows


@pytest.mark.parametrize(("said", "shown"), rows(Path(__file__).parent / "shown.txt"))
def test_figures_are_shown_as_they_were_said(said: str, shown: str) -> None:
    quantity, *slack = read((said,))._.quantities
    assert all(one.difference for one in slack)  # a tolerance is a difference of its own, too
    assert show(quantity).replace("\N{NO-BREAK SPACE}", " ") == shown


@given(st.fractions(min_value=0, max_value=100, max_denominator=128))
def test_a_shown_fraction_reads_back(value: Fraction) -> None:
    number = Number(0, 1, value, "mixed", denominator=value.denominator)
    assert sum(Fraction(part) for part in show_number(value, number).split()) == value


@given(st.integers(min_value=-99999, max_value=99999), st.integers(min_value=0, max_value=4))
def test_a_shown_decimal_reads_back(scaled: int, places: int) -> None:
    value = Fraction(scaled, 10**places)
    assert Fraction(show_number(value, Number(0, 1, value, "decimal", decimals=places))) == value


def test_decimals_are_exact_and_round_to_even() -> None:
    assert show_number(Fraction(5, 2), Number(0, 1, Fraction(5, 2), "decimal", decimals=0)) == "2"
    assert show_number(Fraction(1, 16), Number(0, 1, Fraction(1, 16), "decimal", decimals=3)) == "0.062"
    assert show_number(Fraction(5, 2), Number(0, 1, Fraction(5, 2), "integer")) == "2.5"
