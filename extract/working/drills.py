"""Twist drills: the diameter of a number, a letter or a fraction, and the drill nearest to a diameter.

A #7 is 0.2010 in, an F 0.257 in. Refuses number 81 and fractions finer than sixty-fourths.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path

from extract.working.worked import WorkingError

SOURCE = "ANSI/ASME B94.11M sizes as GNU units 2.22 carries them; the standard was not opened"
FRACTION_SOURCE = "an inch is 25.4 mm exactly"
_FILE = Path(__file__).parent / "data" / "drills.toml"
_FINEST = 64
_NUMBER = re.compile(r"(?:#|no\.?|number|nr\.?)?\s*(\d{1,2})", re.IGNORECASE)
_FRACTION = re.compile(r"(\d+)/(\d+)")
_LARGEST_FRACTION = 64


@dataclass(frozen=True, slots=True)
class Drill:
    """A drill by name: "#7", "F", "13/64"."""

    name: str
    inches: Fraction


@cache
def drills() -> tuple[Drill, ...]:
    """All numbered, lettered and fractional drills up to an inch, the thinnest first."""
    data = tomllib.loads(_FILE.read_text(encoding="utf-8"))
    found = [Drill(f"#{number}", Fraction(size)) for number, size in data["number"].items()]
    found += [Drill(letter, Fraction(size)) for letter, size in data["letter"].items()]
    found += [Drill(str(Fraction(top, _FINEST)), Fraction(top, _FINEST)) for top in range(1, _LARGEST_FRACTION + 1)]
    return tuple(sorted(found, key=lambda drill: drill.inches))


def drill_named(name: str) -> Drill:
    """The drill called `name`: a number ("#7", "no. 7", "7"), a letter ("F") or a fraction of an inch ("13/64").

    Raises `WorkingError` where there is none of that name.
    """
    wanted = name.strip()
    if fraction := _FRACTION.fullmatch(wanted):
        wanted = str(Fraction(int(fraction[1]), int(fraction[2]))) if int(fraction[2]) else wanted
    elif number := _NUMBER.fullmatch(wanted):
        wanted = f"#{int(number[1])}"
    for drill in drills():
        if drill.name.upper() == wanted.upper():
            return drill
    raise WorkingError(f"there is no drill “{name}”", "write #1 to #80, A to Z, or a fraction in 64ths up to 1")


def nearest_drills(inches: Fraction, count: int = 3) -> tuple[Drill, ...]:
    """The drills nearest to a diameter in inches, the nearest first; two that share a size are one: "E or 1/4"."""
    if inches <= 0:
        raise WorkingError("a drill's diameter must be above nought", "check the figure")
    seen: dict[Fraction, Drill] = {}
    for drill in drills():
        if drill.inches in seen:
            drill = Drill(f"{seen[drill.inches].name} or {drill.name}", drill.inches)
        seen[drill.inches] = drill
    return tuple(sorted(seen.values(), key=lambda drill: (abs(drill.inches - inches), drill.inches))[:count])
