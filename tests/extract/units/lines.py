"""Works out with pint how each unit of the list lies to its kin, and writes extract/data/unit_lines.toml.

python -m tests.extract.units.lines --write
"""

from __future__ import annotations

import sys
from fractions import Fraction
from pathlib import Path

import pint

from extract.units import registry, unit_rows

FILE = Path(__file__).parents[3] / "extract" / "data" / "unit_lines.toml"
_HEAD = """\
# How each unit of units.toml lies to the first of its kin there: a figure times `factor` plus `offset` is in `base`.
# Worked out exactly by pint; `python -m tests.extract.units.lines --write` makes it anew, and tests hold
# every row against pint. It only saves loading pint: a unit that is not here is asked of pint.
"""


def lines() -> dict[str, tuple[str, Fraction, Fraction]]:
    """Base, factor and offset by unit."""
    found: dict[str, tuple[str, Fraction, Fraction]] = {}
    bases: list[str] = []
    for name in (*unit_rows(), "delta_degC", "delta_degF"):
        base = next((one for one in bases if _line(name, one)), None)
        if base is None:
            bases.append(name)
            base = name
        line = _line(name, base)
        if line is not None:
            found[name] = (base, *line)
    return found


def _line(name: str, base: str) -> tuple[Fraction, Fraction] | None:
    if ("delta" in name) != ("delta" in base):
        return None
    try:
        values = [registry().Quantity(Fraction(n), name).to(base).magnitude for n in (0, 1, 7)]
    except (pint.DimensionalityError, pint.UndefinedUnitError, TypeError, ValueError):
        return None
    zero, one, seven = (Fraction(value) for value in values)
    # A level in decibels lies on no line.
    return (one - zero, zero) if seven == 7 * (one - zero) + zero else None


def main() -> None:
    """Print the table, or write it."""
    rows = (f'"{name}" = ["{base}", "{factor}", "{offset}"]\n' for name, (base, factor, offset) in lines().items())
    text = _HEAD + "".join(rows)
    if "--write" in sys.argv:
        FILE.write_text(text, encoding="utf-8")
    else:
        sys.stdout.write(text)


if __name__ == "__main__":
    main()
