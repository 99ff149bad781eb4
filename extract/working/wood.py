"""Wood and moisture: how a board's width follows its moisture, and the moisture that air brings about.

A flatsawn 9.15 in board of white fir grows 0.067 in from 8 to 11 percent. Refuses moistures outside 6 to 14 percent,
where the rule does not hold, and woods that the table lacks.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Literal

from extract.working.worked import WorkingError

Cut = Literal["flatsawn", "quartersawn"]
MOVEMENT_SOURCE = "USDA Wood Handbook FPL-GTR-190 (2010), chapter 13, equation 13-2: ΔD = D × C × (M₂ − M₁)"
MOISTURE_SOURCE = "equilibrium moisture content: Simpson 1998, USDA FPL-RN-0268"
_LOWEST, _HIGHEST = 6.0, 14.0
_FILE = Path(__file__).parent / "data" / "woods.toml"


@dataclass(frozen=True, slots=True)
class Wood:
    """Dimensional change coefficients of a wood, a part of the width a percent of moisture."""

    name: str
    radial: float
    """Across a quartersawn board."""
    tangential: float
    """Across a flatsawn board."""
    source: str


@cache
def woods() -> dict[str, Wood]:
    """The woods of the table by name."""
    rows = tomllib.loads(_FILE.read_text(encoding="utf-8"))["woods"]
    usual = "USDA Wood Handbook FPL-GTR-190 (2010), Table 13-5"
    return {
        name: Wood(name, float(row["radial"]), float(row["tangential"]), row.get("source", usual))
        for name, row in rows.items()
    }


def wood_named(name: str) -> Wood:
    """The wood of that name. Raises `WorkingError` where the table lacks it."""
    wanted = " ".join(name.lower().split())
    if wanted not in woods():
        raise WorkingError(f"the table holds no “{name}”", f"take one of: {', '.join(sorted(woods()))}")
    return woods()[wanted]


def movement(width: float, wood: Wood, before: float, after: float, cut: Cut = "flatsawn") -> float:
    """How much a board grows (below nought: shrinks) from `before` to `after` percent of moisture, in its unit.

    Raises `WorkingError` outside 6 to 14 percent, the limits of the handbook's equation.
    """
    for moisture in (before, after):
        if not _LOWEST <= moisture <= _HIGHEST:
            raise WorkingError(
                f"the rule holds from {_LOWEST:g} to {_HIGHEST:g} percent of moisture, not at {moisture:g}",
                "give the moisture of the wood, not of the air",
            )
    if width <= 0:
        raise WorkingError("a board's width must be above nought", "check the figure")
    return width * (wood.tangential if cut == "flatsawn" else wood.radial) * (after - before)


def moisture_content(celsius: float, humidity: float) -> float:
    """Moisture in percent that wood comes to in air of `celsius` °C and `humidity` percent, in time.

    Raises `WorkingError` for a humidity outside 0 to 100 (exclusive) percent.
    """
    if not 0 < humidity < 100:
        raise WorkingError(f"air can't have a relative humidity of {humidity:g} percent", "give one between 0 and 100")
    weight = 349 + 1.29 * celsius + 0.0135 * celsius**2
    k = 0.805 + 0.000736 * celsius - 0.00000273 * celsius**2
    k1 = 6.27 - 0.00938 * celsius - 0.000303 * celsius**2
    k2 = 1.91 + 0.0407 * celsius - 0.000293 * celsius**2
    kh = k * humidity / 100
    first = kh / (1 - kh)
    second = (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2)
    return 1800 / weight * (first + second)
