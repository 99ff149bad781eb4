"""Fractions and mixed numbers: "eleven sixty-fourths", "an eighth", "11 64ths", "3/16", "two and a half", "5-1/2".

Refuses "the third string" and "a fifth coat": an ordinal is a fraction only where a count, a unit or "of" makes it one.
"""

from __future__ import annotations

from fractions import Fraction

from extract.numbers.cardinals import below_hundred, cardinal
from extract.numbers.figure import Figure, Tape
from extract.numbers.vocabulary import vocabulary

_BEHIND_TENTH = (
    "and",
    "or",
    "off",
    "over",
    "under",
    "more",
    "less",
    "out",
    "too",
    "proud",
    "low",
    "high",
    "here",
    "there",
    "thick",
    "thicker",
    "thinner",
    "wide",
    "wider",
    "narrower",
    "deep",
    "deeper",
    "tall",
    "taller",
    "larger",
    "smaller",
    "bigger",
    "tight",
    "tighter",
    "loose",
    "looser",
)
_TENTHS = (10, 100)
_OF_A_UNIT = ("inch", "foot", "millimeter", "millimetre", "mil", "mm", "turn", "thou", "degree")


def mixed(tape: Tape, at: int) -> Figure | None:
    """A whole number and a fraction of one: "nine and a half", "three and five sixteenths", "24 3/4", "1½"."""
    whole = cardinal(tape, at)
    if whole is None or whole.value.denominator != 1:
        return None
    if whole.grouped:
        half = tape.kind(whole.end) == "and" and tape.kind(whole.end + 1) == "article"
        part = fraction(tape, whole.end + 1) if half else None
    elif tape.kind(whole.end) == "and":
        part = fraction(tape, whole.end + 1) or _bare_half(tape, whole.end + 1) or _third(tape, whole.end + 1)
    elif tape.kind(whole.end - 1) == "digits":
        part = _written(tape, tape.skip_dash(whole.end))
    else:
        part = _run_on(tape, whole)
    if part is None or not 0 < part.value < 1:
        return None
    return Figure(at, part.end, whole.value + part.value, "mixed", denominator=part.denominator, grouped=whole.grouped)


def _run_on(tape: Tape, whole: Figure) -> Figure | None:
    """The fraction of "one three eighths", where the "and" was swallowed."""
    if (
        whole.end != whole.start + 1
        or tape.kind(whole.start) not in ("ones", "teens")
        or tape.kind(whole.end) != "ones"
    ):
        return None
    part = fraction(tape, whole.end)
    return part if part and part.denominator in vocabulary().marks else None


def _third(tape: Tape, at: int) -> Figure | None:
    """The "a third" of "33 and a third", at the end of a clause."""
    ends = _ends(tape, at + 2) or tape.text(at + 2) in ("and", "on", "now", "dead")
    if tape.kind(at) == "article" and tape.text(at + 1) == "third" and ends:
        return Figure(at, at + 2, Fraction(1, 3), "fraction", denominator=3)
    return None


def _bare_half(tape: Tape, at: int) -> Figure | None:
    """The "half" of "nine and half"."""
    if tape.kind(at) == "part" and not tape.lexemes[at].plural:
        return _part(tape, at, at, Fraction(1))
    return None


def fraction(tape: Tape, at: int) -> Figure | None:
    """A proper fraction, or a number of parts: "half", "a quarter", "seven sixty-fourths", "9 64ths", "5/64"."""
    written = _written(tape, at)
    if written:
        return written
    if tape.kind(at) == "part":
        return _bare_part(tape, at)
    if tape.kind(at) == "article":
        return _one_part(tape, at)
    above = _numerator(tape, at)
    if above is None:
        return _lone_part(tape, at)
    return _below(tape, at, tape.skip_dash(above.end), above.value)


def _lone_part(tape: Tape, at: int) -> Figure | None:
    """The "eighth of an inch" of "the last eighth of an inch": one part, where "of" and a unit follow."""
    below, end, plural = _denominator(tape, at)
    if plural or below not in vocabulary().marks or tape.kind(at - 1) in ("ones", "teens", "tens", "digits", "dash"):
        return None
    named = tape.text(end) == "of" and tape.kind(end + 1) == "article" and tape.text(end + 2) in _OF_A_UNIT
    return Figure(at, end, Fraction(1, below), "fraction", denominator=below) if named else None


def _written(tape: Tape, at: int) -> Figure | None:
    if tape.kind(at) not in ("slash", "vulgar"):
        return None
    lexeme = tape.lexemes[at]
    return Figure(at, at + 1, lexeme.value, "fraction", denominator=lexeme.denominator)


def _numerator(tape: Tape, at: int) -> Figure | None:
    if tape.kind(at) == "digits":
        return Figure(at, at + 1, tape.value(at), "integer")
    whole = below_hundred(tape, at)
    if whole is None:
        return None
    if tape.kind(whole.end) == "and" and tape.kind(whole.end + 1) == "article" and tape.text(whole.end + 2) == "half":
        return Figure(at, whole.end + 3, whole.value + Fraction(1, 2), "mixed")
    return whole


def _bare_part(tape: Tape, at: int) -> Figure | None:
    """ "half", "quarter", and "half a sixteenth"."""
    if tape.lexemes[at].plural:
        return None
    if tape.text(at) == "half":
        inner = at + 1 if tape.text(at + 1) != "of" else at + 2
        rest = _one_part(tape, inner) if tape.kind(inner) == "article" else None
        if rest and rest.denominator in vocabulary().marks and rest.denominator > 4:
            return Figure(at, rest.end, rest.value / 2, "fraction", denominator=rest.denominator * 2)
    return _part(tape, at, at, Fraction(1))


def _one_part(tape: Tape, at: int) -> Figure | None:
    """ "an eighth", "a thirty-second"; "a third" only where a unit or "of" follows."""
    found = _below(tape, at, at + 1, Fraction(1))
    if found is None:
        return None
    if found.denominator in vocabulary().marks:
        return None if _is_duration(tape, found) else found
    if found.denominator in _TENTHS and (tape.text(found.end) in _BEHIND_TENTH or _ends(tape, found.end)):
        return found
    return found if tape.text(found.end) in ("of", "turn", "inch", "millimeter", "millimetre") else None


def _ends(tape: Tape, at: int) -> bool:
    return at >= len(tape) or tape.is_stop(at) or tape.lexemes[at].breath


def _is_duration(tape: Tape, found: Figure) -> bool:
    """True for "a thirty second soak"."""
    return tape.text(found.end - 1) == "second" and tape.text(found.end) in vocabulary().duration_nouns


def _below(tape: Tape, start: int, at: int, above: Fraction) -> Figure | None:
    """The denominator at `at` under a numerator that was read."""
    if tape.kind(at) == "part":
        return None if _is_next(tape, at, above) else _part(tape, start, at, above)
    below, end, plural = _denominator(tape, at)
    if below not in vocabulary().denominators:
        return None
    singular = not plural
    if singular and above > 1 and tape.is_noun(end) and tape.text(end) not in ("inch", "of"):
        return None
    if singular and _is_duration(tape, Figure(start, end, above, "fraction")):
        return None
    if singular and above > 1 and below not in vocabulary().marks:
        return None
    value = above / below
    return Figure(start, end, value, "fraction", denominator=value.denominator if above.denominator > 1 else below)


def _is_next(tape: Tape, at: int, above: Fraction) -> bool:
    """True for the "half" of "it lifts twenty two / half the difference", which is no part of twenty-two."""
    lexeme = tape.lexemes[at]
    return above > 1 and not lexeme.plural and (lexeme.text == "half" or lexeme.breath)


def _part(tape: Tape, start: int, at: int, above: Fraction) -> Figure:
    below = tape.value(at)
    return Figure(
        start, at + 1, above / below, "fraction", denominator=int(below), article=tape.kind(start) == "article"
    )


def _denominator(tape: Tape, at: int) -> tuple[int, int, bool]:
    """Denominator, end and whether it is a plural: "sixty-fourths", "eighths", "64ths", "hundredths"."""
    if tape.kind(at) == "tens":
        behind = tape.skip_dash(at + 1)
        if tape.kind(behind) == "ordinal" and tape.value(behind) < 10 and tape.text(behind)[0].isalpha():
            return (
                int(tape.value(at) + tape.value(behind)),
                behind + 1,
                tape.lexemes[behind].plural or _is_seconds(tape, behind),
            )
    if tape.kind(at) == "ordinal" and tape.value(at) > 2:
        return int(tape.value(at)), at + 1, tape.lexemes[at].plural
    return 0, at, False


def _is_seconds(tape: Tape, at: int) -> bool:
    return tape.text(at) == "seconds"
