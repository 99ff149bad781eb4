"""Decimals in words: "point oh one two", "seven point five", "oh forty two" (.042), "an oh nine" (.009).

Refuses "at this point two of them": a point is one only where nothing points with it.
"""

from __future__ import annotations

from fractions import Fraction

from extract.numbers.cardinals import below_hundred, cardinal
from extract.numbers.figure import Figure, Tape
from extract.numbers.vocabulary import vocabulary


def decimal(tape: Tape, at: int) -> Figure | None:
    """A decimal that is said, not written."""
    return _with_point(tape, at) or _from_oh(tape, at)


def _with_point(tape: Tape, at: int) -> Figure | None:
    whole, point = Fraction(0), at
    if tape.kind(at) == "oh":
        point = at + 1
    elif tape.kind(at) != "point":
        figure = cardinal(tape, at)
        if figure is None or figure.value.denominator != 1:
            return None
        whole, point = figure.value, figure.end
    elif tape.text(at - 1) in vocabulary().no_point:
        return None
    if tape.kind(point) != "point":
        return None
    digits, end = _digits(tape, point + 1)
    if not digits:
        return None
    value = whole + Fraction(int(digits), 10 ** len(digits))
    return Figure(at, end, value, "decimal", decimals=len(digits))


def _digits(tape: Tape, at: int, listed: bool = False) -> tuple[str, int]:
    """Digits said one by one or in pairs: "oh one two", "one eight", "twenty five"."""
    digits, end = "", at
    while True:
        if listed and tape.kind(end) == "oh" and len(digits) >= 1 and tape.kind(end + 1) in ("ones", "teens"):
            return digits, end  # "oh five oh four" is a list
        if tape.kind(end) in ("oh", "zero"):
            digits, end = digits + "0", end + 1
            continue
        if tape.kind(end) == "digits" and not digits and tape.text(end).isdigit():
            return tape.text(end), end + 1
        figure = below_hundred(tape, end)
        if figure is None or _is_next_number(tape, figure, digits):
            return digits, end
        digits, end = digits + str(figure.value), figure.end


def _is_next_number(tape: Tape, figure: Figure, digits: str) -> bool:
    """True where a figure behind the decimals is a number of its own: "point five eighths" is none."""
    behind = tape.skip_dash(figure.end)
    if tape.text(figure.start) == "one" and tape.text(figure.end) in vocabulary().one_behind:
        return True
    return bool(digits) and (len(digits) >= 4 or tape.kind(behind) in ("part", "ordinal", "scale"))


def _from_oh(tape: Tape, at: int) -> Figure | None:
    """Thousandths of an inch as string and feeler gauges are named: "oh ten" is .010, "oh nine" .009.

    Common practice, no source: two figures are read as thousandths, three or four as decimals.
    """
    if tape.kind(at) != "oh" or tape.text(at) != "oh":
        return None
    if tape.kind(at + 1) == "digits":
        return None  # "oh, 1987 or so": who writes digits writes the point too
    digits, end = _digits(tape, at + 1, listed=True)
    if not digits or set(digits) == {"0"}:
        return None
    digits = "0" + digits
    if len(digits) == 2:
        digits = "0" + digits
    return Figure(at, end, Fraction(int(digits), 10 ** len(digits)), "decimal", decimals=len(digits))
