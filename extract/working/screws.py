"""Screws: the body of a numbered screw, and the pitch of a thread.

A number 8 is 0.164 in; 1/4-20 has a pitch of 1.27 mm; #10-32 is no M5. Refuses M7, which the table lacks.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

from extract.working.worked import WorkingError

NUMBER_SOURCE = (
    "0.060 in + 0.013 in × number, wood and machine screws: GNU units 2.22; ASME B18.6.1 and B18.6.3 from memory"
)
_FILE = Path(__file__).parent / "data" / "threads.toml"
_INCH = Fraction(254, 10)
_LARGEST = 24
_NUMBERED = re.compile(r"#\s*(\d{1,2})")
_METRIC = re.compile(r"m\s*(\d+(?:\.\d+)?)(?:\s*[x×]\s*(\d+(?:\.\d+)?))?", re.IGNORECASE)
_UNIFIED = re.compile(r"(#\s*\d{1,2}|\d+/\d+|1)\s*[-–]\s*(\d{1,3})")


@dataclass(frozen=True, slots=True)
class Thread:
    """A thread by designation."""

    name: str
    diameter: Fraction
    """In millimetres."""
    pitch: Fraction
    """In millimetres."""
    threads_per_inch: Fraction
    tap: str | None
    """The usual tap drill, null where the table has none."""
    source: str


def screw_diameter(number: int) -> Fraction:
    """Body diameter in inches of a numbered screw: 0.060 + 0.013 × number. Raises `WorkingError` outside 0 to 24."""
    if not 0 <= number <= _LARGEST:
        raise WorkingError(f"there is no screw number {number}", f"give one from 0 to {_LARGEST}")
    return Fraction(60 + 13 * number, 1000)


@cache
def _tables() -> dict[str, Any]:
    return tomllib.loads(_FILE.read_text(encoding="utf-8"))


def thread_named(name: str) -> Thread:
    """The thread called "M6", "M6x1", "1/4-20" or "#10-32". Raises `WorkingError` where it is in no table."""
    plain = name.strip()
    if metric := _METRIC.fullmatch(plain):
        return _metric(name, metric[1], metric[2])
    if unified := _UNIFIED.fullmatch(plain):
        return _unified(name, unified[1].replace(" ", ""), int(unified[2]))
    raise WorkingError(f"“{name}” is no thread", "write it as M6, 1/4-20 or #10-32")


def _metric(name: str, size: str, pitch: str | None) -> Thread:
    table = _tables()["metric_coarse"]
    coarse = table["pitch_mm"].get(f"{float(size):g}")
    if coarse is None and pitch is None:
        raise WorkingError(f"the table holds no coarse {name}", "write its pitch too, as in M7x0.75")
    given = Fraction(pitch or coarse)
    usual = coarse is not None and Fraction(coarse) == given
    tap = table["tap_mm"].get(f"{float(size):g}") if usual else None
    return Thread(
        f"M{float(size):g} × {float(given):g}",
        Fraction(size),
        given,
        _INCH / given,
        f"{tap} mm" if tap else None,
        table["source"] if usual else "definition: the pitch is as written",
    )


def _unified(name: str, size: str, threads: int) -> Thread:
    for series in ("unified_coarse", "unified_fine"):
        table = _tables()[series]
        if table["threads_per_inch"].get(size) == threads:
            diameter = _inch_size(size)
            tap = table.get("tap_drill", {}).get(size)
            return Thread(
                f"{size}-{threads}", diameter * _INCH, _INCH / threads, Fraction(threads), tap, table["source"]
            )
    raise WorkingError(f"no coarse or fine Unified thread is {name}", "check the threads to the inch")


def _inch_size(size: str) -> Fraction:
    numbered = _NUMBERED.fullmatch(size)
    return screw_diameter(int(numbered[1])) if numbered else Fraction(size)
