"""Two writings of one figure have the same digits."""

from __future__ import annotations

import pytest
from num2words import num2words

from capture.figures import digits_said, is_number, is_unit


@pytest.mark.parametrize(
    ("text", "digits"),
    [
        ("five sixty-fourths", "564"),
        ("5/64", "564"),
        ("5 64ths", "564"),
        ("564", "564"),
        ("eleven sixty fourths", "1164"),
        ("three and a half", "32"),
        ("3 ½", "312"),
        ("two point four", "24"),
        ("twelve thou", "121000"),
        ("the saddle", ""),
        ("twenty", "20"),
        ("thirty-second", "32"),
        ("ten six", "106"),
    ],
)
def test_digits(text: str, digits: str) -> None:
    assert digits_said(text) == digits


@pytest.mark.parametrize("number", range(100))
def test_words_below_a_hundred_have_their_digits(number: int) -> None:
    # Reference: num2words.
    assert digits_said(num2words(number)) == str(number)


@pytest.mark.parametrize("number", range(3, 100))
def test_ordinals_have_the_digits_of_their_number(number: int) -> None:
    # Reference: num2words.
    assert digits_said(num2words(number, to="ordinal")) == str(number)


@pytest.mark.parametrize("word", ["three", "sixty-fourths", "11/64", "64ths", "½", "Twelve,"])
def test_numbers(word: str) -> None:
    assert is_number(word)


@pytest.mark.parametrize("word", ["saddle", "fore", "tooth", "-"])
def test_other_words_are_no_numbers(word: str) -> None:
    assert not is_number(word)


@pytest.mark.parametrize("word", ["inch", "mm,", "millimetres.", "°", "%"])
def test_units(word: str) -> None:
    assert is_unit(word)
