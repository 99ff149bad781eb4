"""The search's files as they stand on the site: scripts that hand over plain data, since these load from a disk too."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import Any

import orjson

from extract.numbers.vocabulary import vocabulary
from extract.units import UnitError, to_unit, unit_rows
from publish.find.query import BOUNDS
from publish.find.scale import BASE
from publish.search.terms import Shards

FOLDER = "search"
_KINDS = frozenset({"ones", "teens", "tens", "scale", "zero", "oh", "ordinal", "part", "article", "and", "point"})
"""Kinds of words that a question's numbers may be made of."""


def items_file(slug: str) -> str:
    """A session's own file."""
    return f"{FOLDER}/items/{slug}.js"


def handed_over(name: str, data: Any) -> bytes:
    """A script that gives `data` under a name; angle brackets and line ends of Unicode are written as escapes."""
    text = orjson.dumps([name, data]).decode()
    for letter in "<>&\u2028\u2029":
        text = text.replace(letter, f"\\u{ord(letter):04x}")
    return f"shopSearch.take.apply(null, {text});\n".encode()


def shared_files(slugs: list[str], shards: Shards) -> dict[str, bytes]:
    """Every file of the search but the sessions' own, by name on the site."""
    files = {
        f"{FOLDER}/sessions.js": handed_over("sessions", {"slugs": slugs, "shards": sorted(shards)}),
        f"{FOLDER}/units.js": handed_over("units", _units()),
    }
    for name, lists in shards.items():
        files[f"{FOLDER}/{name}.js"] = handed_over(name, lists)
    return files


@cache
def _units() -> dict[str, Any]:
    """How each unit is written, its kind, and the line that leads to the kind's base: factor and offset."""
    said: dict[str, str] = {}
    lines: dict[str, tuple[str, float, float]] = {}
    for name, row in unit_rows().items():
        base = BASE.get(row.unit.kind, name)
        try:
            nought, one = (to_unit(Fraction(value), name, base) for value in (0, 1))
        except UnitError:
            continue
        lines[name] = (row.unit.kind, float(one - nought), float(nought))
        for form in (*row.said, row.unit.symbol.casefold()):
            said.setdefault(form, name)
    return {"said": said, "lines": lines, "bounds": BOUNDS, "numbers": _numbers()}


def _numbers() -> dict[str, Any]:
    """The words of which numbers are made, each with its kind and value, and the denominators."""
    known = vocabulary()
    words = {word: (kind, float(value)) for word, (kind, value) in known.words.items() if kind in _KINDS}
    return {"words": words, "marks": sorted(known.marks), "others": sorted(known.denominators - known.marks)}
