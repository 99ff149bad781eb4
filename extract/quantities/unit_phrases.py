"""Finding a unit's spoken or written form among lexemes."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from extract.numbers.figure import Tape
from extract.numbers.lexer import split
from extract.quantities.phrases import Phrases
from extract.spans import Unit
from extract.units import unit_data, unit_rows

_NO_NUMBER = ("word", "mark", "article", "name", None)
_DIGITS = ("digits", "decimal", "slash", "vulgar")


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
def _between(name: str) -> Phrases:
    return Phrases(unit_data()["between"][name])


def unit_at(tape: Tape, at: int, after_digits: bool = False) -> UnitMatch | None:
    """The unit whose longest form begins at lexeme `at`. `after_digits`: a figure in digits stands right before it."""
    for pieces, form, name in _phrases().get(tape.text(at), ()):
        if all(tape.text(at + offset) == piece for offset, piece in enumerate(pieces)):
            match = UnitMatch(unit_rows()[name].unit, at, at + len(pieces), form)
            if form.endswith("s") and tape.text(at - 1) == "one" and tape.kind(at - 2) in _NO_NUMBER:
                continue  # "this one mikes at 15"
            if _allowed(tape, match, after_digits):
                return match
    return None


def _allowed(tape: Tape, match: UnitMatch, after_digits: bool) -> bool:
    short = unit_data()["after_digits"]
    if match.said not in short["said"]:
        return True
    lexeme = tape.lexemes[match.start]
    if match.said in short["worded"] and tape.kind(match.start - 1) not in _NO_NUMBER:
        return True
    if not after_digits or (match.said in short["glued"] and not lexeme.glued):
        return False
    if match.said in short["spaced"] and lexeme.glued:
        return False
    if match.said in short["capital"] and not lexeme.glued and not lexeme.raw.isupper():
        return False
    if match.said != "in":
        return True
    otherwise = tape.text(match.end) in short["not_before"] or tape.kind(match.end) in _DIGITS
    return not otherwise and _named_behind(tape, match.start) is None


def unit_behind(tape: Tape, at: int, fraction: bool = False) -> UnitMatch | None:
    """The unit right behind a figure that ends at `at`, or behind "full" and the like; for a fraction, "of an" too."""
    after_digits = tape.kind(at - 1) in _DIGITS
    found = _named_behind(tape, at) or unit_at(tape, at, after_digits)
    if found:
        return found
    for name in ("fraction", "phrases") if fraction else ("phrases",):
        end = _between(name).at(tape, at)
        if end is not None and (match := unit_at(tape, end, after_digits and tape.kind(at) == "dash")):
            return match
    return _rate(tape, at) or _afterthought(tape, at)


def _named_behind(tape: Tape, at: int) -> UnitMatch | None:
    """The Fahrenheit of "110 in Fahrenheit"; "two in second gear" has no such unit."""
    match = unit_at(tape, at + 1) if tape.text(at) == "in" else None
    named = match is not None and (match.unit.kind == "temperature" or match.said.endswith("s"))
    return UnitMatch(match.unit, at, match.end, match.said) if match is not None and named else None


def _afterthought(tape: Tape, at: int) -> UnitMatch | None:
    """The grams of "between 1.5 and 2, grams obviously"."""
    behind = _afterthoughts("links").at(tape, at)
    match = unit_at(tape, behind) if behind is not None else None
    if match is None or not match.said.endswith("s") or tape.lexemes[match.start].breath:
        return None
    ends = match.end >= len(tape) or tape.is_stop(match.end) or tape.lexemes[match.end].breath
    named = _afterthoughts("then").at(tape, match.end) is not None
    return match if named or (ends and behind != at + 1) else None


@cache
def _afterthoughts(name: str) -> Phrases:
    return Phrases(unit_data()["afterthought"][name])


def _rate(tape: Tape, at: int) -> UnitMatch | None:
    """ "impressions an hour", "strokes per minute": so many of anything in a stretch."""
    few = tape.kind(at - 1) == "ones" and tape.kind(at - 2) not in ("tens", "scale", "and", "dash")
    if few or not tape.is_noun(at) or not tape.text(at).endswith("s") or tape.text(at).endswith("ss"):
        return None
    rates = unit_data()["rate"]
    end = _rate_links().at(tape, at + 1)
    name = rates["units"].get(tape.text(end)) if end is not None else None
    if end is None or name is None:
        return None
    return UnitMatch(unit_rows()[name].unit, at, end + 1, f"{tape.text(at)} {tape.text(end)}")


@cache
def _rate_links() -> Phrases:
    return Phrases(unit_data()["rate"]["links"])
