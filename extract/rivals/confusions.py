"""Rows of what is heard for what was said, and a stretch of words rewritten by them."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from capture.figures import digits_of
from extract.numbers.vocabulary import vocabulary

_HOLES = ("{n}", "{ones}", "{place}")


@dataclass(frozen=True, slots=True)
class Confusion:
    """One row: parts heard, parts said, and why."""

    heard: tuple[str, ...]
    said: tuple[str, ...]
    why: str
    favour: float
    """Nats in favour of what was said, where what is heard makes hardly any sense at a bench."""


@dataclass(frozen=True, slots=True)
class Rewrite:
    """Parts `start` to `end` (exclusive) replaced by others."""

    start: int
    end: int
    parts: tuple[str, ...]
    why: str
    favour: float = 0.0


@cache
def confusions() -> tuple[Confusion, ...]:
    """All rows of data/confusions.toml."""
    data = tomllib.loads(files("extract").joinpath("data/confusions.toml").read_text("utf-8"))
    found: list[Confusion] = []
    for row in data.values():
        if row.get("pairs"):
            pairs = list(zip(row["heard"], row["said"], strict=True))
        else:
            pairs = [(heard, said) for heard in row["heard"] for said in row["said"]]
        favour = float(row.get("favour", 0))
        found.extend(Confusion(tuple(h.split()), tuple(s.split()), row["why"], favour) for h, s in pairs)
    return tuple(found)


def rewrites(parts: Sequence[str]) -> Iterator[Rewrite]:
    """Every way in which one row rewrites `parts`."""
    for row in confusions():
        yield from _of_row(row, parts)


def _of_row(row: Confusion, parts: Sequence[str]) -> Iterator[Rewrite]:
    for at in range(len(parts) - len(row.heard) + 1):
        filled = _match(row.heard, parts[at : at + len(row.heard)])
        if filled is not None:
            said = tuple(filled if part in _HOLES else part for part in row.said)
            yield Rewrite(at, at + len(row.heard), said, row.why, row.favour)


def everywhere(parts: Sequence[str]) -> Iterator[list[Rewrite]]:
    """The rewrites of one row in all places, where it fits more than one: who misses "thou" once misses it again."""
    for row in confusions():
        places: list[Rewrite] = []
        for one in _of_row(row, parts):
            if not places or one.start >= places[-1].end:
                places.append(one)
        if len(places) > 1:
            yield places


def _match(pattern: Sequence[str], parts: Sequence[str]) -> str | None:
    """What fills the pattern's hole, an empty text where it has none; null where it doesn't match."""
    filled = ""
    for wanted, part in zip(pattern, parts, strict=True):
        if wanted in _HOLES:
            if not _fits(wanted, part):
                return None
            filled = part
        elif wanted != part:
            return None
    return filled


def _fits(hole: str, part: str) -> bool:
    kind = vocabulary().words.get(part, ("", 0))[0]
    if hole == "{ones}":
        return kind == "ones"
    if hole == "{place}":
        return kind == "ordinal"
    return digits_of(part) is not None and kind != "ordinal"
