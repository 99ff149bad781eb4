"""Units of measurement: the list in data/units.toml, and exact conversion between them.

Conversion runs on pint with `Fraction` magnitudes, which keeps the defined factors exact (an inch is 127/5 mm).
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any, Literal

from capture.errors import DataFileError, SpokeshaveError
from extract.spans import Unit

System = Literal["imperial", "metric"]
_FILE = Path(__file__).parent / "data" / "units.toml"


class UnitError(SpokeshaveError):
    """Units that can't be turned into one another."""

    def __init__(self, unit: str, other: str) -> None:
        self.unit = unit
        self.other = other
        super().__init__(f"{unit} can't be turned into {other}: they measure different things; check the unit")


@dataclass(frozen=True, slots=True)
class UnitRow:
    """One row of the list."""

    unit: Unit
    said: tuple[str, ...]
    """Spoken and written forms, lower case."""
    system: System | None
    in_pint: bool
    """False for the units that pint does not know: the cent of pitch."""


@cache
def unit_data() -> dict[str, Any]:
    """The whole of data/units.toml."""
    return tomllib.loads(_FILE.read_text(encoding="utf-8"))


@cache
def unit_rows() -> dict[str, UnitRow]:
    """All rows by unit name. Raises `DataFileError` where a name or a spoken form stands twice."""
    rows: dict[str, UnitRow] = {}
    spoken: dict[str, str] = {}
    for data in unit_data()["unit"]:
        name = data["name"]
        if name in rows:
            raise DataFileError(_FILE, name, "stands twice", "join the two rows")
        for form in data["said"]:
            if spoken.setdefault(form, name) != name:
                raise DataFileError(_FILE, name, f'"{form}" is also {spoken[form]}', "take it out of one of the two")
        unit = Unit(name=name, kind=data["kind"], ucum=data.get("ucum"), symbol=data["symbol"])
        rows[name] = UnitRow(unit, tuple(data["said"]), data.get("system"), data.get("pint", True))
    return rows


def unit_named(name: str) -> Unit:
    """The unit of that name; `KeyError` where the list has none."""
    return unit_rows()[name].unit


def system_of(unit: Unit) -> System | None:
    """Whether a unit is imperial or metric; None where it is neither (degree of angle, minute, volt)."""
    return unit_rows()[unit.name].system if unit.name in unit_rows() else None


@cache
def registry() -> Any:
    """Pint's registry with the units of the list."""
    import pint  # heavy, and needed only where something is converted

    registry: Any = pint.UnitRegistry(non_int_type=Fraction, cache_folder=":auto:")
    for row in unit_data()["unit"]:
        if "definition" in row:
            registry.define(f"{row['name']} = {row['definition']}")
    return registry


def to_unit(value: Fraction, unit: Unit | str, other: Unit | str) -> Fraction:
    """`value` of `unit` in `other`, exact; a temperature with its offset.

    Raises `UnitError` where the two measure different things.
    """
    here, there = (one if isinstance(one, str) else one.name for one in (unit, other))
    if here == there:
        return value
    factor, offset = _line(here, there)
    return value * factor + offset


@cache
def _line(here: str, there: str) -> tuple[Fraction, Fraction]:
    """Factor and offset from one unit to another: every unit of the list lies on a line with its kin, and asking pint
    twice a pair instead of once a figure tells on a long session; not loading it at all tells on a short one."""
    known = _lines()
    if here in known and there in known:
        (base, factor, offset), (other_base, other_factor, other_offset) = known[here], known[there]
        if base != other_base:
            raise UnitError(here, there)
        return factor / other_factor, (offset - other_offset) / other_factor
    import pint

    try:
        zero, one = (Fraction(registry().Quantity(Fraction(n), here).to(there).magnitude) for n in (0, 1))
    except (pint.DimensionalityError, pint.UndefinedUnitError, TypeError) as error:
        # TypeError: a level in decibels is a logarithm, of which pint makes no exact ratio.
        raise UnitError(here, there) from error
    return one - zero, zero


@cache
def _lines() -> dict[str, tuple[str, Fraction, Fraction]]:
    """Base, factor and offset by unit; the reason stands in the file."""
    data = tomllib.loads(_FILE.with_name("unit_lines.toml").read_text(encoding="utf-8"))
    return {name: (base, Fraction(factor), Fraction(offset)) for name, (base, factor, offset) in data.items()}


def interval_to_unit(value: Fraction, unit: Unit | str, other: Unit | str) -> Fraction:
    """A difference of `value` `unit` in `other`: 18 degF of difference are 10 degC, without an offset."""
    here, there = (one if isinstance(one, str) else one.name for one in (unit, other))
    delta = {"degF": "delta_degF", "degC": "delta_degC"}
    return to_unit(value, delta.get(here, here), delta.get(there, there))
