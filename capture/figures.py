"""Which words make up a spoken figure, and its digits in the order said.

No value is worked out here; that is for the rooms behind this one. "five sixty-fourths" and "564" have the same digits.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

_PARTS = re.compile(r"[^\W_]+(?:['’][^\W_]+)?|[%°½¼¾⅛⅜⅝⅞]")
_NUMERAL = re.compile(r"(\d+)(?:st|nd|rd|th|ths|s)?|(\d+)([a-z]+)")
_VULGAR = {"½": "12", "¼": "14", "¾": "34", "⅛": "18", "⅜": "38", "⅝": "58", "⅞": "78"}


@dataclass(frozen=True, slots=True)
class _Words:
    digits: dict[str, str]
    linking: frozenset[str]
    units: frozenset[str]


def parts_of(text: str) -> list[str]:
    """Lower-case parts of a word or text without punctuation: "Sixty-fourths," gives "sixty", "fourths"."""
    return _PARTS.findall(text.casefold())


def digits_of(part: str) -> str | None:
    """The digits of one part: "fourths" gives "4", "64ths" gives "64"; null where it is no number."""
    if part in _VULGAR:
        return _VULGAR[part]
    numeral = _NUMERAL.fullmatch(part)
    if numeral:
        return numeral[1] or numeral[2]
    known = _words().digits
    found = known.get(part)
    return found if found is not None else known.get(part.removesuffix("s"))


def is_number(word: str) -> bool:
    """True where some part of a word is a number."""
    return any(digits_of(part) is not None for part in parts_of(word))


def is_linking(word: str) -> bool:
    """True for a word that may stand inside a figure."""
    return parts_of(word)[:1] == [word.casefold()] and word.casefold() in _words().linking


def is_unit(word: str) -> bool:
    """True for a unit of measurement, by name or short form, or a word that ends in one ("mm-wide" is none)."""
    found = parts_of(word)
    return len(found) == 1 and (found[0] in _words().units or found[0] in "%°")


def digits_said(text: str) -> str:
    """All digits of a text, in order: "eleven sixty-fourths", "11/64" and "1164" all give "1164"."""
    return "".join(numbers_said(text))


def numbers_said(text: str) -> list[str]:
    """The numbers of a text, in order: "eleven sixty-fourths" and "11/64" give "11", "64"; "1164" stays one."""
    digits: list[str] = []
    for found in (digits_of(part) for part in parts_of(text)):
        if found is None:
            continue
        # "sixty-four" is 60 and 4 in words, 64 in digits.
        if digits and len(digits[-1]) == 2 and digits[-1][1] == "0" and len(found) == 1 and digits[-1] != "10":
            digits[-1] = digits[-1][0] + found
        else:
            digits.append(found)
    return digits


@cache
def _words() -> _Words:
    data = tomllib.loads(files("capture").joinpath("data/figures.toml").read_text("utf-8"))
    return _Words(data["digits"], frozenset(data["linking"]["words"]), frozenset(data["units"]["words"]))
