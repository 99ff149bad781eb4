"""The list of units against pint, UCUM, the printed factors of NIST SP 811 and GNU units."""

from __future__ import annotations

import shutil
import subprocess
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st
from ucumvert import PintUcumRegistry, get_ucum_parser

from extract.units import UnitError, UnitRow, interval_to_unit, system_of, to_unit, unit_data, unit_named, unit_rows
from tests.extract.units.tables import rows

HERE = Path(__file__).parent
ROWS = sorted(unit_rows().values(), key=lambda row: row.unit.name)
STOCK: pint.UnitRegistry[float] = pint.UnitRegistry()
KINDS = ("length", "mass", "torque", "pressure", "force")
SAME_IN_UCUM = [row for row in ROWS if row.unit.ucum and row.unit.kind in KINDS and row.unit.name != "inch_Hg"]
"""Without the inch of mercury: ucumvert 0.3.2 takes the one at 60 degF, UCUM and pint the conventional one."""
UCUM = get_ucum_parser()
UCUM_UNITS = PintUcumRegistry()
LENGTHS = sorted(row.unit.name for row in ROWS if row.unit.kind == "length")


def by_name(row: UnitRow) -> str:
    return row.unit.name


@pytest.mark.parametrize("row", [row for row in ROWS if row.in_pint], ids=by_name)
def test_a_stock_registry_reads_every_name(row: UnitRow) -> None:
    STOCK.parse_units(row.unit.name)


@pytest.mark.parametrize("row", [row for row in ROWS if not row.in_pint], ids=by_name)
def test_units_marked_as_unknown_are_unknown_to_pint(row: UnitRow) -> None:
    with pytest.raises(pint.UndefinedUnitError):
        STOCK.parse_units(row.unit.name)


@pytest.mark.parametrize("row", [row for row in ROWS if row.unit.ucum], ids=by_name)
def test_ucum_codes_parse(row: UnitRow) -> None:
    UCUM.parse(row.unit.ucum)


@pytest.mark.parametrize("row", SAME_IN_UCUM, ids=by_name)
def test_ucum_codes_mean_the_same_unit(row: UnitRow) -> None:
    theirs = UCUM_UNITS.from_ucum(row.unit.ucum).to_base_units()
    ours = STOCK.Quantity(1, row.unit.name).to_base_units()
    assert theirs.magnitude == pytest.approx(ours.magnitude, rel=1e-9)
    assert str(theirs.units) == str(ours.units)


@pytest.mark.parametrize(("unit", "si", "printed"), rows(HERE / "nist_sp811_b8.txt"))
def test_factors_are_those_printed(unit: str, si: str, printed: str) -> None:
    ours = to_unit(Fraction(1), unit, si)
    places = -Decimal(printed).adjusted() + 6
    assert round(ours, places) == round(Fraction(printed), places)


@pytest.mark.parametrize(("fraction", "exact", "rounded"), rows(HERE / "fractions_of_an_inch.txt"))
def test_fractions_of_an_inch_are_exact(fraction: str, exact: str, rounded: str) -> None:
    ours = to_unit(Fraction(fraction), "inch", "millimeter")
    assert ours == Fraction(exact)
    assert round(ours, 3) == Fraction(rounded)


@pytest.mark.skipif(shutil.which("units") is None, reason="GNU units is not installed")
@pytest.mark.parametrize(("unit", "gnu_unit", "other", "gnu_other"), rows(HERE / "gnu_units.txt"))
def test_gnu_units_agrees(unit: str, gnu_unit: str, other: str, gnu_other: str) -> None:
    command = ["units", "--digits", "12", "--terse", gnu_unit, gnu_other]
    said = subprocess.run(command, capture_output=True, text=True, check=True).stdout
    assert float(to_unit(Fraction(1), unit, other)) == pytest.approx(float(said.split()[0]), rel=1e-10)


@given(
    st.fractions(min_value=0, max_value=1000, max_denominator=128), st.sampled_from(LENGTHS), st.sampled_from(LENGTHS)
)
def test_there_and_back_is_exact(value: Fraction, unit: str, other: str) -> None:
    assert to_unit(to_unit(value, unit, other), other, unit) == value


def test_temperatures_have_an_offset_and_differences_none() -> None:
    assert to_unit(Fraction(140), "degF", "degC") == 60
    assert to_unit(Fraction(986, 10), "degF", "degC") == 37
    assert interval_to_unit(Fraction(18), "degF", "degC") == 10


def test_other_kinds_are_refused_in_one_line() -> None:
    with pytest.raises(UnitError, match=r"inch can't be turned into gram: .*check the unit"):
        to_unit(Fraction(1), "inch", "gram")
    with pytest.raises(UnitError):
        to_unit(Fraction(1), "cent", "hertz")


def test_a_unit_is_its_own_even_where_pint_knows_none() -> None:
    assert to_unit(Fraction(7), "cent", "cent") == 7


def test_systems() -> None:
    assert system_of(unit_named("thou")) == "imperial"
    assert system_of(unit_named("newton * meter")) == "metric"
    assert system_of(unit_named("minute")) is None


def test_every_unit_that_a_rule_names_is_in_the_list() -> None:
    data = unit_data()
    named = {*data["other"], *data["other"].values(), *data["dual"]}
    named |= {unit for listed in data["dual"].values() for unit in listed}
    named |= {unit for row in data["compound"] for unit in (row["large"], row["small"], row["result"])}
    named |= {unit for row in data["choice"] for unit in (*row["units"], *row["take"].values())}
    named |= {*data["article"]["units"], *data["article"]["alone"]}
    assert named - {"temperature"} <= set(unit_rows())
