"""Finding a unit's spoken or written form among lexemes."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from extract.numbers.figure import Tape
from extract.numbers.lexer import split
from extract.spans import Unit
from extract.units import unit_data, unit_rows


@dataclass(frozen=True, slots=True)
class UnitMatch:
    """A unit said at lexemes `start` to `end`."""

    unit: Unit
    start: int
    end: int
    said: str


@cache
def _phrases() -> dict[str, list[tuple[tuple[str, ...], str, str]]]:
    """Spoken forms by their first lexeme, longest first: (lexemes, form, unit name)."""
    found: dict[str, list[tuple[tuple[str, ...], str, str]]] = {}
    for name, row in unit_rows().items():
        for form in row.said:
            pieces = split(form)
            found.setdefault(pieces[0], []).append((pieces, form, name))
    for listed in found.values():
        listed.sort(key=lambda entry: len(entry[0]), reverse=True)
    return found


@cache
def _betweens() -> tuple[tuple[str, ...], ...]:
    return tuple(sorted((split(p) for p in unit_data()["between"]["phrases"]), key=len, reverse=True))


def unit_at(tape: Tape, at: int, after_digits: bool) -> UnitMatch | None:
    """The unit whose longest form begins at lexeme `at`. `after_digits`: a figure in digits stands right before it."""
    for pieces, form, name in _phrases().get(tape.text(at), ()):
        if all(tape.text(at + offset) == piece for offset, piece in enumerate(pieces)):
            match = UnitMatch(unit_rows()[name].unit, at, at + len(pieces), form)
            if _allowed(tape, match, after_digits):
                return match
    return None


def _allowed(tape: Tape, match: UnitMatch, after_digits: bool) -> bool:
    short = unit_data()["after_digits"]
    if match.said not in short["said"]:
        return True
    lexeme = tape.lexemes[match.start]
    if not after_digits or (match.said in short["glued"] and not lexeme.glued):
        return False
    if match.said in short["spaced"] and lexeme.glued:
        return False
    if match.said in short["capital"] and not lexeme.glued and not lexeme.raw.isupper():
        return False
    return not (match.said.rstrip(".") == "in" and tape.text(match.end) in short["not_before"])


def unit_behind(tape: Tape, at: int, after_digits: bool) -> UnitMatch | None:
    """The unit at lexeme `at` or behind "of an", "full" and the like."""
    found = unit_at(tape, at, after_digits)
    if found:
        return found
    for phrase in _betweens():
        if all(tape.text(at + offset) == piece for offset, piece in enumerate(phrase)):
            return unit_at(tape, at + len(phrase), after_digits=phrase == ("-",) and after_digits)
    return None
