"""Numbers in words and digits: phrases from a text fixture, and round trips against num2words."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from num2words import num2words
from spacy.lang.en import English

from extract.numbers import find_numbers
from extract.spans import Number
from tests.extract.marked import Marked, read, single_lines

PHRASES = single_lines(Path(__file__).parent / "phrases" / "words.txt")
NLP = English()
ORDINALS = {2: "half", 4: "quarter", 8: "eighth", 16: "sixteenth", 32: "thirty second", 64: "sixty fourth"}


def numbers_in(text: str) -> list[Number]:
    return list(find_numbers(NLP(text)))


def ends(number: Number) -> tuple[Fraction, Fraction]:
    if number.low is None or number.high is None:
        return number.value, number.value
    return number.low, number.high


@pytest.mark.parametrize("phrase", PHRASES, ids=lambda phrase: phrase.name)
def test_phrases_are_read_exactly(phrase: Marked) -> None:
    doc = read(phrase.lines)
    found = [(doc[number.start : number.end].text, *ends(number)) for number in doc._.numbers]
    assert found == [(one.quote, one.low, one.high) for one in phrase.expected]


@given(st.integers(min_value=1, max_value=1_000_000))
@settings(deadline=None)
def test_whole_numbers_come_back_from_words(value: int) -> None:
    spoken = num2words(value).replace(",", "")
    for said in (spoken, spoken.replace("-", " ")):
        (number,) = numbers_in(said)
        assert number.value == value
        assert number.form == "integer"


@given(st.integers(min_value=1, max_value=99), st.integers(min_value=0, max_value=9999))
@settings(deadline=None)
def test_decimals_come_back_from_words(whole: int, thousandths: int) -> None:
    spoken = f"{num2words(whole)} point {' '.join(num2words(int(digit)) for digit in f'{thousandths:04d}')}"
    (number,) = numbers_in(spoken.replace("zero", "oh"))
    assert number.value == whole + Fraction(thousandths, 10_000)
    assert number.decimals == 4


@given(st.integers(min_value=0, max_value=30), st.integers(min_value=1, max_value=63))
@settings(deadline=None, max_examples=300)
def test_all_sixty_fourths_come_back(whole: int, above: int) -> None:
    part = Fraction(above, 64)
    name = ORDINALS[part.denominator] + ("s" if part.numerator > 1 else "")
    spoken = f"{num2words(part.numerator) if part.numerator > 1 else 'a'} {name}"
    if whole:
        spoken = f"{num2words(whole)} and {spoken}"
    for said in (spoken, spoken.replace("-", " ")):
        (number,) = numbers_in(said)
        assert number.value == whole + part
        assert number.denominator == part.denominator


@given(st.integers(min_value=0, max_value=40), st.integers(min_value=1, max_value=63))
@settings(deadline=None)
def test_written_fractions_keep_their_denominator(whole: int, above: int) -> None:
    (number,) = numbers_in(f"{whole} {above}/64" if whole else f"{above}/64")
    assert number.value == whole + Fraction(above, 64)
    assert number.denominator == 64


@given(st.text(alphabet="abc 0123456789./-,½'\"", max_size=60))
@settings(deadline=None)
def test_any_text_gives_spans_in_order(text: str) -> None:
    doc = NLP(text)
    spans = [(number.start, number.end) for number in find_numbers(doc)]
    assert all(0 <= start < end <= len(doc) for start, end in spans)
    assert spans == sorted(spans)
