"""Wire gauges: the diameter of a gauge number in each system that is in use.

20 is 0.0320 in of American wire, 0.036 in of British, 0.045 in of music wire: a gauge without its system is no size.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path

from extract.working.worked import WorkingError

_FILE = Path(__file__).parent / "data" / "wire.toml"
_THINNEST, _RATIO, _TURN, _SIZES = 0.005, 92.0, 36, 39


@dataclass(frozen=True, slots=True)
class Gauge:
    """A system of wire gauges."""

    name: str
    title: str
    said: tuple[str, ...]
    source: str
    inches: dict[int, float]


@cache
def gauges() -> dict[str, Gauge]:
    """The systems by name: "american", "british", "steel", "music"."""
    found = {}
    for name, row in tomllib.loads(_FILE.read_text(encoding="utf-8")).items():
        if "inches" in row:
            sizes = {int(number): float(size) for number, size in row["inches"].items()}
        else:
            sizes = {number: american(number) for number in range(row["first"], row["last"] + 1)}
        found[name] = Gauge(name, row["title"], tuple(row["said"]), row["source"], sizes)
    return found


def american(number: int) -> float:
    """Diameter in inches of an American wire gauge; 00 is -1. Source: ASTM B258 by its formula."""
    return float(_THINNEST * _RATIO ** ((_TURN - number) / _SIZES))


def diameters(number: int) -> dict[str, float]:
    """Diameter in inches of a gauge number in each system that has it. Raises `WorkingError` where none has."""
    found = {name: gauge.inches[number] for name, gauge in gauges().items() if number in gauge.inches}
    if not found:
        raise WorkingError(f"no wire gauge has a number {number}", "give the number that is on the reel")
    return found


def gauge_number(text: str) -> int:
    """The number of a gauge as written: "20" is 20, "00" and "2/0" are -1. Raises `WorkingError` for anything else."""
    plain = text.strip().lstrip("#")
    if plain.endswith("/0") and plain[:-2].isdigit():
        return 1 - int(plain[:-2])
    if len(plain) > 1 and not plain.strip("0"):
        return 1 - len(plain)
    if plain.isdigit():
        return int(plain)
    raise WorkingError(f"“{text}” is no gauge number", "write 20, 00 or 2/0")


def nearest_gauge(gauge: Gauge, inches: Fraction) -> int:
    """The number in `gauge` whose diameter is nearest to one in inches."""
    return min(gauge.inches, key=lambda number: abs(gauge.inches[number] - float(inches)))
