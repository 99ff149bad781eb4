"""The model's pieces of text become words."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from capture.words import Piece, in_order, join_pieces


def pieces(*texts: str) -> list[Piece]:
    return [Piece(text, number, number + 0.5, 0.9) for number, text in enumerate(texts)]


@pytest.mark.parametrize(
    ("given", "expected"),
    [
        ([" sixty", "-fourths."], ["sixty-fourths."]),
        ([" 11", "/64"], ["11/64"]),
        ([" 0", ".140", " inch,"], ["0.140", "inch,"]),
        ([" so", " ...", " then"], ["so...", "then"]),
        ([" -", " three"], ["three"]),
        ([" £", "12"], ["£12"]),
        ([" two words"], ["two", "words"]),
        (["Well", " then"], ["Well", "then"]),
        ([" ", ""], []),
    ],
)
def test_joining(given: list[str], expected: list[str]) -> None:
    assert [word.text for word in join_pieces(pieces(*given))] == expected


def test_a_joined_word_takes_in_the_times_of_its_pieces() -> None:
    (word,) = join_pieces(pieces(" sixty", "-fourths"))
    assert (word.start, word.end) == (0, 1.5)


def test_a_word_is_as_sure_as_its_least_sure_piece() -> None:
    (word,) = join_pieces([Piece(" 11", 0, 1, 0.9), Piece("/64", 1, 2, 0.2)])
    assert word.probability == 0.2


def test_punctuation_does_not_make_a_word_unsure() -> None:
    (word,) = join_pieces([Piece(" bone", 0, 1, 0.9), Piece(" -", 1, 2, 0.1)])
    assert (word.text, word.probability) == ("bone-", 0.9)


@given(st.lists(st.tuples(st.floats(0, 30), st.floats(0, 30)), max_size=30))
def test_times_rise(drawn: list[tuple[float, float]]) -> None:
    ordered = in_order(Piece("a", start, end, 1.0) for start, end in drawn)
    clock = 0.0
    for word in ordered:
        assert clock <= word.start <= word.end
        clock = word.end


@given(st.lists(st.text(alphabet=" ab1-.,/½", max_size=5), max_size=20))
def test_no_word_has_white_space_and_no_letter_is_lost(texts: list[str]) -> None:
    joined = join_pieces(pieces(*texts))
    assert all(word.text and word.text.split() == [word.text] for word in joined)
    kept = "".join(word.text for word in joined)
    assert [c for c in kept if c.isalnum()] == [c for text in texts for c in text if c.isalnum()]
