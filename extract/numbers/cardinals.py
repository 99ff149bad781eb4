"""Whole numbers in words and digits: "twenty-four", "a hundred and forty", "fourteen hundred", "three fifty", "1,200".

Refuses "one of the other": that is a word of its own, sorted out later; and "sixty fourths", which is a fraction's.
"""

from __future__ import annotations

from fractions import Fraction

from extract.numbers.figure import Figure, Tape
from extract.numbers.vocabulary import vocabulary
from extract.spans import Form

_LARGEST_ALONE = 1000
_WORDS = ("ones", "teens", "tens")


def below_hundred(tape: Tape, at: int) -> Figure | None:
    """One to ninety-nine in words."""
    match tape.kind(at):
        case "ones" | "teens":
            return Figure(at, at + 1, tape.value(at), "integer")
        case "tens":
            behind = tape.skip_dash(at + 1)
            if tape.kind(behind) == "ones" and not _breaks_off(tape, behind):
                return Figure(at, behind + 1, tape.value(at) + tape.value(behind), "integer")
            return Figure(at, at + 1, tape.value(at), "integer")
    return None


def _breaks_off(tape: Tape, at: int) -> bool:
    """True for the "two" of "five, ten and twenty / two of the twenties", where a new breath begins."""
    return tape.lexemes[at].breath and tape.text(at + 1) == "of"


def _after_and(tape: Tape, at: int) -> Figure | None:
    return below_hundred(tape, at + 1 if tape.kind(at) == "and" else at)


def _start(tape: Tape, at: int) -> Figure | None:
    """What may stand before "hundred": a small number, digits, or "a"."""
    if tape.kind(at) == "article" and tape.kind(at + 1) == "scale":
        return Figure(at, at + 1, Fraction(1), "integer", article=True)
    if tape.kind(at) in ("digits", "decimal"):
        lexeme = tape.lexemes[at]
        form: Form = "decimal" if lexeme.decimals else "integer"
        return Figure(at, at + 1, lexeme.value, form, decimals=lexeme.decimals or None)
    return below_hundred(tape, at)


def cardinal(tape: Tape, at: int) -> Figure | None:
    """A whole number of any size; digits may have decimals."""
    if tape.kind(at) == "zero":
        if tape.text(at) == "ought" and (tape.text(at + 1) in ("to", "not", "n't") or tape.is_stop(at + 1)):
            return None  # "it ought to be fifteen"
        return Figure(at, at + 1, Fraction(0), "integer")
    if tape.kind(at) == "article" and tape.kind(at + 1) == "couple":
        return Figure(at, at + 3 if tape.text(at + 2) == "of" else at + 2, tape.value(at + 1), "integer")
    if _is_lone_scale(tape, at):
        return Figure(at, at + 1, tape.value(at), "integer")
    first = _start(tape, at)
    if first is None or _is_ordinal(tape, first):
        return None
    if tape.kind(first.end) != "scale":
        return first if tape.kind(at) in ("digits", "decimal") else _grouped(tape, first) or first
    return _scaled(tape, at, first)


def _is_lone_scale(tape: Tape, at: int) -> bool:
    """True for the "hundred" of "a pair of hundred ohm resistors", before one noun in the singular."""
    if tape.kind(at) != "scale" or tape.value(at) > _LARGEST_ALONE or tape.kind(at - 1) not in (None, "word", "mark"):
        return False
    behind = tape.text(at + 1)
    led = tape.is_noun(at + 1) or tape.is_noun(at + 2)
    return led and tape.kind(at + 1) == "word" and not behind.endswith("s") and not tape.lexemes[at + 1].breath


def _is_ordinal(tape: Tape, first: Figure) -> bool:
    """True for the "twenty" of "the twenty-fifth" and "a twenty fifth"; "thirty second" may be a time."""
    if tape.kind(first.start) != "tens" or first.end != first.start + 1:
        return False
    behind = tape.skip_dash(first.end)
    word = tape.text(behind)
    ordinal = tape.kind(behind) == "ordinal" and not tape.lexemes[behind].plural and word[:1].isalpha()
    return ordinal and tape.value(behind) < 10 and (word != "second" or behind != first.end)


def _scaled(tape: Tape, at: int, first: Figure) -> Figure:
    """ "two thousand three hundred and five": groups of falling scale, added up."""
    total, group, end = Fraction(0), first.value, first.end
    limit = Fraction(10**9)
    while tape.kind(end) == "scale" and tape.value(end) < limit:
        scale = tape.value(end)
        end += 1
        if scale == 100:
            group *= 100
            rest = _after_and(tape, end)
            if rest and not _begins_fraction(tape, rest):
                group, end = group + rest.value, rest.end
            if tape.kind(end) == "scale" and tape.value(end) > 100:
                continue
            return _whole(at, end, total + group, first)
        total, limit = total + group * scale, scale
        following = _after_and(tape, end)
        if following is None or _begins_fraction(tape, following):
            return _whole(at, end, total, first)
        group, end = following.value, following.end
        if tape.kind(end) != "scale" or tape.value(end) >= limit:
            return _whole(at, end, total + group, first)
    return _whole(at, end, total, first)


def _whole(at: int, end: int, value: Fraction, first: Figure) -> Figure:
    whole = value.denominator == 1
    return Figure(at, end, value, "integer" if whole else "decimal", decimals=None if whole else first.decimals)


def _begins_fraction(tape: Tape, figure: Figure) -> bool:
    """True for the "five" of "a hundred and five eighths"."""
    behind = tape.skip_dash(figure.end)
    return tape.kind(behind) in ("part", "ordinal") or (
        tape.kind(behind) == "tens" and tape.kind(tape.skip_dash(behind + 1)) == "ordinal"
    )


def _grouped(tape: Tape, first: Figure) -> Figure | None:
    """Groups of digits run together: "three fifty" is 350, "one oh five" 105, "nineteen seventy six" 1976."""
    at = first.end
    if tape.text(first.start) == "one" and tape.text(first.start - 1) in vocabulary().pronoun_before:
        return None
    if tape.kind(at) == "oh" and tape.kind(at + 1) == "ones" and not _begins_fraction_at(tape, at + 1):
        return Figure(first.start, at + 2, first.value * 100 + tape.value(at + 1), "integer", grouped=True)
    second = below_hundred(tape, at)
    if second is not None and tape.lexemes[at].breath:
        return None  # "down to eight / twenty two take away eight": a new breath begins a new number
    if second is None or _begins_fraction(tape, second) or tape.kind(second.end) == "scale":
        return None
    if (second.value >= 10 and first.value % 10 != 0) or (second.value >= 10 and first.value >= 10):
        return Figure(first.start, second.end, first.value * 100 + second.value, "integer", grouped=True)
    if 10 < first.value < 20 and second.end == second.start + 1:
        value = first.value + second.value / 10
        return Figure(first.start, second.end, value, "decimal", decimals=1, grouped=True)
    return None


def _begins_fraction_at(tape: Tape, at: int) -> bool:
    figure = below_hundred(tape, at)
    return figure is not None and _begins_fraction(tape, figure)
