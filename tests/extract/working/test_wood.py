"""Wood and moisture, held against the Wood Handbook."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from extract.working import WorkingError
from extract.working.wood import moisture_content, movement, wood_named, woods

# USDA Wood Handbook FPL-GTR-190 (2010), Table 4-3: shrinkage from green to ovendry, percent, radial and tangential.
SHRINKAGE = {
    "red alder": (4.4, 7.3), "white ash": (4.9, 7.8), "basswood": (6.6, 9.3), "beech": (5.5, 11.9),
    "cherry": (3.7, 7.1), "white fir": (3.3, 7.0), "bigleaf maple": (3.7, 7.1), "sugar maple": (4.8, 9.9),
    "sitka spruce": (4.3, 7.5), "walnut": (5.5, 7.8),
}  # fmt: skip


@pytest.mark.parametrize(("name", "shrinkage"), SHRINKAGE.items())
def test_two_tables_of_the_handbook_agree(name: str, shrinkage: tuple[float, float]) -> None:
    # Its equation 13-3 at 10 percent turns a shrinkage S into the coefficient: (S/3000)/(1 − 20 S/3000), S in percent.
    row = wood_named(name)
    for coefficient, percent in zip((row.radial, row.tangential), shrinkage, strict=True):
        assert coefficient == pytest.approx(percent / 3000 / (1 - 20 * percent / 3000), abs=0.000006)


def test_the_handbooks_worked_example() -> None:
    # Chapter 13: a 232 mm (9.15 in) board grows by 1.7 mm (0.067 in); species and moistures from memory.
    fir = wood_named("white fir")
    assert round(movement(232, fir, 8, 11), 1) == 1.7
    assert round(movement(9.15, fir, 8, 11), 3) == 0.067


def test_a_magazines_worked_example() -> None:
    # A woodworking magazine's chart: 8 in of flatsawn red alder through 6 percent moves about 1/8 in.
    assert movement(8, wood_named("red alder"), 6, 12) == pytest.approx(1 / 8, abs=0.003)


@given(st.sampled_from(sorted(woods())), st.floats(6, 14), st.floats(6, 14), st.floats(1, 1000))
def test_going_there_and_back_moves_nothing(name: str, before: float, after: float, width: float) -> None:
    row = wood_named(name)
    there, back = movement(width, row, before, after), movement(width, row, after, before)
    assert there == pytest.approx(-back)


@pytest.mark.parametrize(("before", "after"), [(5, 8), (8, 15), (60, 8)])
def test_the_rule_stops_where_the_handbook_says(before: float, after: float) -> None:
    with pytest.raises(WorkingError, match="6 to 14"):
        movement(10, wood_named("cherry"), before, after)


def test_an_unknown_wood_names_the_known() -> None:
    with pytest.raises(WorkingError, match="cherry"):
        wood_named("unobtainium")


@pytest.mark.parametrize(
    ("humidity", "content"),
    # Wood Handbook Table 4-2, the 70 °F row, from memory; Simpson 1998 (FPL-RN-0268) fits it within 0.1.
    [(20, 4.5), (25, 5.4), (30, 6.2), (35, 6.9), (40, 7.7), (45, 8.5), (50, 9.2), (55, 10.1), (60, 11.0), (65, 12.0),
     (70, 13.1), (75, 14.4), (80, 16.0), (85, 18.0), (90, 20.5), (95, 23.9)],
)  # fmt: skip
def test_the_moisture_of_air_at_seventy_fahrenheit(humidity: float, content: float) -> None:
    assert moisture_content((70 - 32) / 1.8, humidity) == pytest.approx(content, abs=0.15)


@pytest.mark.parametrize("humidity", [0, 100, -5, 140])
def test_air_has_a_humidity_between_nought_and_a_hundred(humidity: float) -> None:
    with pytest.raises(WorkingError):
        moisture_content(20, humidity)
