"""Ranges: "two or three", "25 to 30", "between two and three", "five or six sixteenths" (5/16 to 6/16).

Refuses "seven to five" (a ratio, a score, or minutes to the hour) and "from two to three" (a change, two numbers).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

from extract.numbers.figure import Figure, Tape
from extract.numbers.vocabulary import vocabulary

ReadFigure = Callable[[Tape, int], Figure | None]


def number_range(tape: Tape, first: Figure, read: ReadFigure) -> tuple[Figure, Figure] | None:
    """Both ends of the range that begins with `first`, or None where it is a number alone."""
    if tape.text(first.start - 1) in vocabulary().between:
        return _between(tape, first, read)
    behind = first.end if _is_run(tape, first) else behind_link(tape, first.end)
    if behind is None or is_change(tape, first.start) or is_pronoun(tape, first):
        return None
    second = read(tape, behind)
    if second is None or second.value < 0 or (second.article and tape.kind(second.end - 1) == "scale"):
        return None
    if _is_hour(tape, first, second):
        return None
    low = _share_denominator(first, second)
    return (low, second) if low.value < second.value else None


def _is_run(tape: Tape, first: Figure) -> bool:
    """ "two three thou": neighbours said one after the other; "one two three" counts and is no range."""
    at = first.end
    small = ("ones", "teens")
    if first.end != first.start + 1 or tape.kind(first.start) not in small or tape.kind(at) not in small:
        return False
    alone = (
        tape.kind(at + 1) not in (*small, "tens", "digits", "part", "ordinal", "scale", "and")
        and tape.kind(first.start - 1) not in small
    )
    return alone and tape.value(at) == first.value + 1


def _between(tape: Tape, first: Figure, read: ReadFigure) -> tuple[Figure, Figure] | None:
    """ "between two and three eighths": the "and" that would make a mixed number joins two ends."""
    for end in range(first.start + 1, first.end + 1):
        if tape.kind(end) != "and":
            continue
        low = Figure(first.start, end, Fraction(0), "integer")
        plain = _read_exactly(tape, low, read)
        second = read(tape, end + 1)
        if plain and second and second.value.denominator > 0:
            shared = _share_denominator(plain, second)
            if shared.value < second.value and not _goes_on(tape, second):
                return shared, second
    return None


def _goes_on(tape: Tape, second: Figure) -> bool:
    return tape.kind(second.end) == "and" and tape.kind(second.end + 1) in (
        "ones",
        "teens",
        "tens",
        "digits",
        "article",
        "slash",
    )


def _read_exactly(tape: Tape, wanted: Figure, read: ReadFigure) -> Figure | None:
    cut = Tape(tape.lexemes[: wanted.end], tape.nouns)
    found = read(cut, wanted.start)
    return found if found and found.end == wanted.end else None


def behind_link(tape: Tape, at: int) -> int | None:
    """Index behind the words that join the ends of a range."""
    if tape.kind(at) == "dash":
        return at + 1
    start = at + 1 if tape.text(at) == "," else at
    for link in vocabulary().links:
        if all(tape.text(start + offset) == word for offset, word in enumerate(link)):
            return start + len(link)
    return None


def _is_hour(tape: Tape, first: Figure, second: Figure) -> bool:
    """True for "quarter to six", a time of day."""
    quarter = tape.text(first.end - 1) == "quarter" and tape.text(first.end) == "to" and first.value < 1
    return quarter and second.form == "integer"


def is_pronoun(tape: Tape, first: Figure) -> bool:
    """True for the "one" of "grind the new one to 39"."""
    return tape.text(first.start) == "one" and tape.text(first.start - 1) in vocabulary().pronoun_before


def is_change(tape: Tape, at: int) -> bool:
    """True behind a "from" that has no word of spread before it."""
    if tape.text(at - 1) != "from":
        return False
    return not any(tape.text(back) in vocabulary().spread for back in range(at - 4, at - 1))


def _share_denominator(low: Figure, high: Figure) -> Figure:
    """ "five or six sixteenths": the first end has the second's denominator."""
    if low.form != "integer" or high.form != "fraction" or not high.denominator or low.value < 1:
        return low
    if low.value >= high.value * high.denominator:
        return low
    return replace(low, value=low.value / high.denominator, form="fraction", denominator=high.denominator)
