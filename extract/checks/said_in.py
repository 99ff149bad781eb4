"""The words of data/check_patterns.toml, as sets and as alternatives of a pattern."""

from __future__ import annotations

import re
import tomllib
from functools import cache
from importlib.resources import files


@cache
def words_for(table: str, name: str) -> frozenset[str]:
    """A list as a set. `KeyError` where the file has none of that name."""
    return frozenset(_lists()[table][name])


@cache
def either(table: str, name: str) -> str:
    """A list as a group of a pattern, in the file's order: `(?:raise|raises)`."""
    return f"(?:{'|'.join(map(re.escape, _lists()[table][name]))})"


@cache
def holding(table: str, name: str) -> re.Pattern[str]:
    """A pattern that one of a list is said anywhere in a text."""
    return re.compile(rf"\b{either(table, name)}\b")


@cache
def _lists() -> dict[str, dict[str, list[str]]]:
    return tomllib.loads((files("extract") / "data" / "check_patterns.toml").read_text(encoding="utf-8"))
