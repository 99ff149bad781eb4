"""Arcs, held against worked examples."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from extract.working import WorkingError
from extract.working.arc import radius, sagitta


def test_the_worked_example_for_an_instrument_back() -> None:
    # CRC Standard Mathematical Tables (1959) p. 398, as a published worked example cites it: 14 in chord, 1/4 in high.
    assert radius(14, 0.25) == pytest.approx(98.125)


@pytest.mark.parametrize(
    ("feet", "chord", "rise"),
    [(25, 15, Fraction(3, 32)), (15, 15, Fraction(5, 32))],
)
def test_the_rise_of_the_usual_dishes(feet: int, chord: int, rise: Fraction) -> None:
    # Computed from the circle's definition by hand: 25 ft over 15 in is 0.09376 in, 15 ft is 0.1563 in.
    assert sagitta(feet * 12, chord) == pytest.approx(float(rise), abs=0.0001)


@given(st.floats(1, 2000), st.floats(0.001, 1))
def test_radius_and_rise_undo_each_other(chord: float, part: float) -> None:
    height = chord / 2 * part
    assert sagitta(radius(chord, height), chord) == pytest.approx(height, rel=1e-6)


@given(st.floats(1, 5000), st.floats(0.0001, 2))
def test_the_rise_agrees_with_the_textbook_form_and_keeps_its_digits(bend: float, part: float) -> None:
    chord = bend * part
    exact = bend - (bend**2 - chord**2 / 4) ** 0.5
    assert sagitta(bend, chord) == pytest.approx(exact, abs=1e-9 * bend)


@pytest.mark.parametrize(("chord", "height"), [(0, 1), (1, 0), (10, 6), (-3, 1)])
def test_no_arc_is_more_than_half_a_circle(chord: float, height: float) -> None:
    with pytest.raises(WorkingError):
        radius(chord, height)


def test_no_chord_is_longer_than_the_circle_is_wide() -> None:
    with pytest.raises(WorkingError, match="units"):
        sagitta(12, 25)
