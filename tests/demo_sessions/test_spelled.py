"""The tests' own reader of spelled-out figures, on figures that anybody can read."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.demo_sessions.spelled import number


@pytest.mark.parametrize(
    ("words", "value"),
    [
        ("nine sixty-fourths", Fraction(9, 64)),
        ("one sixty-fourth", Fraction(1, 64)),
        ("a sixteenth of an inch", Fraction(1, 16)),
        ("half a millimeter", Fraction(1, 2)),
        ("twenty-five and a half inches", Fraction(51, 2)),
        ("twenty-five and five eighths inches", Fraction(205, 8)),
        ("six and three quarter inches", Fraction(27, 4)),
        ("twelve and one eighth inches", Fraction(97, 8)),
        ("one-eighth inch", Fraction(1, 8)),
        ("a hundred and eighty degrees Fahrenheit", Fraction(180)),
        ("two hundred and ten inch pounds", Fraction(210)),
        ("about three degrees", Fraction(3)),
        ("twelve thousandths", Fraction(12)),
        ("forty-five to fifty", Fraction(45)),
    ],
)
def test_reads(words: str, value: Fraction) -> None:
    assert number(words) == value


def test_refuses_words_without_a_number() -> None:
    with pytest.raises(ValueError, match="no number starts"):
        number("a little more")
