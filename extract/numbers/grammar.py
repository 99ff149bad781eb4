"""The whole grammar: every number of a narration, ranges included.

    number = range | figure
    range  = ["between"] figure link figure
    figure = mixed | fraction | decimal | cardinal

The longest reading wins, in that order where two are as long.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TYPE_CHECKING

from extract.numbers.cardinals import cardinal
from extract.numbers.decimals import decimal
from extract.numbers.figure import Figure, Tape
from extract.numbers.lexer import lex
from extract.numbers.parts import fraction, mixed
from extract.numbers.ranges import number_range
from extract.spans import Number

if TYPE_CHECKING:
    from spacy.tokens import Doc

_RULES = (mixed, fraction, decimal, cardinal)


@dataclass(frozen=True, slots=True)
class Parsed:
    """A number and the lexemes it was read from."""

    number: Number
    start: int
    end: int
    grouped: bool
    links: tuple[int, int] | None = None
    """Lexemes of the word between the ends of a range."""


def figure(tape: Tape, at: int) -> Figure | None:
    """The longest figure that begins at lexeme `at`."""
    found = [read for rule in _RULES if (read := rule(tape, at)) is not None]
    best = max(found, key=lambda read: read.end, default=None)
    return best and _signed(tape, best)


def _signed(tape: Tape, read: Figure) -> Figure:
    """A written "-5" is negative where the dash stands free before it and glued to it."""
    at = read.start
    dashed = tape.kind(at - 1) == "dash" and tape.lexemes[at].glued and not tape.lexemes[at - 1].glued
    said = tape.kind(at - 1) == "minus" and tape.text(at - 2) != "or" and tape.kind(at - 2) not in ("digits", "ones")
    if not (dashed and tape.kind(at) in ("digits", "decimal", "slash")) and not said:
        return read
    return replace(read, start=at - 1, value=-read.value)


def parse(doc: Doc) -> tuple[Tape, tuple[Parsed, ...]]:
    """All numbers of a narration in order, and the lexemes they stand on."""
    nouns = frozenset(token.i for token in doc if token.tag_.startswith("NN"))
    tape = Tape(lex(doc), nouns)
    found: list[Parsed] = []
    at = 0
    while at < len(tape):
        first = figure(tape, at)
        if first is None:
            at += 1
            continue
        ranged = number_range(tape, first, figure)
        parsed = _ranged(tape, *ranged) if ranged else _single(tape, first)
        found.append(parsed)
        at = parsed.end
    return tape, tuple(found)


def _number(tape: Tape, start: int, end: int, value: Fraction, read: Figure) -> Number:
    return Number(
        start=tape.lexemes[start].token,
        end=tape.lexemes[end - 1].token + 1,
        value=value,
        form=read.form,
        denominator=read.denominator,
        decimals=read.decimals,
    )


def _single(tape: Tape, read: Figure) -> Parsed:
    return Parsed(_number(tape, read.start, read.end, read.value, read), read.start, read.end, read.grouped)


def _ranged(tape: Tape, low: Figure, high: Figure) -> Parsed:
    ends = sorted((low.value, high.value))
    shaped = high if high.form != "integer" else low
    number = _number(tape, low.start, high.end, sum(ends, Fraction(0)) / 2, shaped)
    number = replace(
        number,
        low=ends[0],
        high=ends[1],
        decimals=max(low.decimals or 0, high.decimals or 0) or None,
        denominator=max(low.denominator or 0, high.denominator or 0) or None,
    )
    return Parsed(number, low.start, high.end, False, (low.end, high.start))
