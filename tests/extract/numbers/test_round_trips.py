"""Figures written out by num2words and `fractions`, in the several ways that they are said, come back exactly."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from num2words import num2words

from tests.extract.marked import read
from tests.extract.numbers.test_numbers import ends, numbers_in

INCHES = range(0, 9)
DENOMINATORS = (2, 4, 8, 16, 32, 64)
OWN_NAMES = {2: "half", 4: "quarter"}
"""The parts that are not called by their ordinal."""


def in_words(part: Fraction, above: int, below: int) -> Iterator[str]:
    """A proper fraction as it is said, its ends given, since "two eighths" is said as well as "a quarter"."""
    assert Fraction(above, below) == part
    name = OWN_NAMES.get(below, num2words(below, to="ordinal"))
    if above == 1:
        yield from (f"{one} {name}" for one in ("a" if name[0] not in "aeiou" else "an", "one"))
    else:
        yield f"{num2words(above)} {'halves' if below == 2 else name + 's'}"


def said(whole: int, above: int, below: int) -> Iterator[tuple[str, int]]:
    """Ways to say a mixed number, each with the denominator that is heard: in words, in digits and in both."""
    part = Fraction(above, below)
    start = f"{num2words(whole)} and " if whole else ""
    for words in in_words(part, above, below):
        yield f"{start}{words}", below
        yield f"{start}{words}".replace("-", " "), below
    yield (f"{whole} {above}/{below}" if whole else f"{above}/{below}"), below
    if whole:
        yield f"{whole}-{above}/{below}", below
        yield f"{whole} and {above}/{below}", below
    if below > 4:
        ending = {32: "nds"}.get(below, "ths")
        yield f"{start}{above} {below}{ending if above > 1 else ending[:-1]}", below


@pytest.mark.parametrize("whole", INCHES)
def test_every_part_of_an_inch_comes_back(whole: int) -> None:
    for below in DENOMINATORS:
        for above in range(1, below):
            for words, denominator in said(whole, above, below):
                found = numbers_in(words)
                assert [one.value for one in found] == [whole + Fraction(above, below)], words
                assert found[0].denominator == denominator, words


@pytest.mark.parametrize("above", range(1, 64))
def test_every_sixty_fourth_is_an_inch(above: int) -> None:
    part = Fraction(above, 64)
    words = next(in_words(part, above, 64)).replace("-", " ")
    for talk in (f"the action is {words}", f"the slot is two and {words} inches wide", f"set it {above}/64 inch high"):
        (one,) = read((talk,))._.quantities
        assert one.value % 1 == part, talk
        assert one.unit is not None
        assert one.unit.name == "inch", talk


@given(st.integers(min_value=1, max_value=1_000_000))
@settings(deadline=None)
def test_whole_numbers_come_back_without_an_and(value: int) -> None:
    spoken = num2words(value).replace(",", "").replace("-", " ").replace(" and ", " ")
    (number,) = numbers_in(spoken)
    assert number.value == value


@pytest.mark.parametrize("hundreds", [one for one in range(1, 100) if one % 10])
def test_groups_of_digits_come_back(hundreds: int) -> None:
    """Without whole tens: "twenty five" is 25."""
    spoken = num2words(hundreds).replace("-", " ")
    for rest in range(10, 100):
        (number,) = numbers_in(f"{spoken} {num2words(rest)}".replace("-", " "))
        assert number.value == 100 * hundreds + rest
    for rest in range(1, 10):
        (number,) = numbers_in(f"{spoken} oh {num2words(rest)}")
        assert number.value == 100 * hundreds + rest


@given(st.integers(min_value=0, max_value=999), st.text(alphabet="0123456789", min_size=1, max_size=4), st.booleans())
@settings(deadline=None, max_examples=300)
def test_decimals_come_back_as_spoken(whole: int, digits: str, oh: bool) -> None:
    nought = "oh" if oh else "zero"
    listed = " ".join(nought if digit == "0" else num2words(int(digit)) for digit in digits)
    value = whole + Fraction(int(digits), 10 ** len(digits))
    start = num2words(whole).replace("-", " ")
    ways = [f"{start} point {listed}", f"{whole}.{digits}"]
    if not whole:
        ways += [f"point {listed}", f"nought point {listed}", f".{digits}"]
    for words in ways:
        (number,) = numbers_in(words)
        assert number.value == value, words
        assert number.decimals == len(digits), words


@given(st.integers(min_value=0, max_value=99), st.integers(min_value=10, max_value=99))
@settings(deadline=None)
def test_decimals_come_back_in_pairs(whole: int, pair: int) -> None:
    (number,) = numbers_in(f"{num2words(whole)} point {num2words(pair)}".replace("-", " "))
    assert number.value == whole + Fraction(pair, 100)


@given(st.integers(min_value=2, max_value=998), st.integers(min_value=1, max_value=999))
@settings(deadline=None)
def test_ranges_keep_both_ends(low: int, more: int) -> None:
    high = low + more
    start, end = num2words(low), num2words(high)
    for words in (f"{start} to {end}", f"between {low} and {high}", f"{low}-{high}", f"{start} or {end}"):
        (number,) = numbers_in(words.replace(",", ""))
        assert ends(number) == (Fraction(low), Fraction(high)), words
