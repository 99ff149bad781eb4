"""Reads narrations with the expected figures marked in the text: "leave {two or three thou = 2..3 thou} there"."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from pathlib import Path

from spacy.language import Language
from spacy.tokens import Doc

from extract.narration import make_doc
from extract.pipeline import load_language
from extract.trade import guess_trade, load_trade
from tests.extract.narrations import transcript_of

_MARK = re.compile(r"\{([^{}=]+) = ([^{}]+)\}")
_FLAGS = frozenset({"unsaid", "hedged", "at_most", "at_least", "difference"})
_LATER_STAGES = ["measures", "corrections", "steps", "remarks"]


@dataclass(frozen=True)
class Expected:
    """A figure marked in a narration."""

    cue: int
    quote: str
    low: Fraction
    high: Fraction
    unit: str | None
    flags: frozenset[str]


@dataclass(frozen=True)
class Marked:
    """A narration, its lines without the marks, and what was marked."""

    name: str
    lines: tuple[str, ...]
    expected: tuple[Expected, ...]


def marked(name: str, lines: list[str]) -> Marked:
    """A narration from lines with marks, one cue a line."""
    expected = tuple(_expected(cue, found) for cue, line in enumerate(lines) for found in _MARK.finditer(line))
    return Marked(name, tuple(_MARK.sub(r"\1", line) for line in lines), expected)


def _expected(cue: int, found: re.Match[str]) -> Expected:
    value, *rest = found[2].split()
    low, _, high = value.partition("..")
    flags = frozenset(rest) & _FLAGS
    unit = " ".join(word for word in rest if word not in _FLAGS) or None
    return Expected(cue, found[1], Fraction(low), Fraction(high or low), unit, flags)


def phrases(path: Path) -> list[Marked]:
    """The narrations of a file: blocks divided by empty lines; a line with "#" is their heading."""
    found, block, heading = [], list[str](), path.stem
    for line in [*path.read_text(encoding="utf-8").splitlines(), ""]:
        if line.startswith("#"):
            heading = line.removeprefix("#").strip()
        elif line.strip():
            block.append(line)
        elif block:
            one = marked(heading, block)
            found.append(replace(one, name=f"{heading}: {one.lines[0]}"))
            block = []
    return found


def single_lines(path: Path) -> list[Marked]:
    """The narrations of a file in which every line stands alone."""
    lines = [line for line in path.read_text(encoding="utf-8").splitlines() if line.strip() and line[0] != "#"]
    found = [marked("", [line]) for line in lines]
    return [replace(one, name=one.lines[0]) for one in found]


def narration(path: Path) -> Marked:
    """A whole narration: a head of "key: value" lines, "---", then one cue a line."""
    body = path.read_text(encoding="utf-8").split("---\n", 1)[1]
    return marked(path.stem, [line for line in body.splitlines() if line.strip()])


@cache
def language() -> Language:
    """The pipeline, loaded once for all tests."""
    return load_language()


def read(lines: tuple[str, ...], trade: str | None = None) -> Doc:
    """A narration with its numbers and quantities found; the trade is guessed where none is given."""
    transcript = transcript_of(lines)
    doc = make_doc(language(), transcript)
    doc._.trade = load_trade(trade or guess_trade(transcript.text))
    return language()(doc, disable=_LATER_STAGES)
