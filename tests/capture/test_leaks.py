"""A measure never comes from the prime."""

from __future__ import annotations

import pytest

from capture.leaks import Prime, leaks, settle
from capture.words import Hearing, Piece

PRIME = Prime.of("The action is five sixty-fourths, the slot is one thirty-second wide, four thousandths, treble side.")


def hearing(text: str, *, sure: float = 0.9, no_speech: float = 0.0, start: float = 0.0) -> Hearing:
    words = tuple(
        Piece(word, start + number * 0.4, start + number * 0.4 + 0.35, sure) for number, word in enumerate(text.split())
    )
    return Hearing(words, -0.2, no_speech, 1.5)


@pytest.mark.parametrize(
    ("text", "sure", "no_speech", "suspected"),
    [
        ("The action is five sixty-fourths.", 0.9, 0.0, "The action is five sixty-fourths."),
        ("Now the action is five sixty fourths I think", 0.9, 0.0, "the action is five sixty fourths"),
        ("Four thousandths.", 0.3, 0.0, "Four thousandths."),
        ("it had four thousandths of play", 0.9, 0.0, ""),
        ("the action is high", 0.3, 0.0, ""),
        ("on the treble side.", 0.3, 0.0, ""),
        ("Twenty-fourths, you", 0.9, 0.8, "Twenty-fourths, you"),
        ("the kettle is on", 0.9, 0.8, ""),
        ("", 0.9, 0.9, ""),
    ],
)
def test_what_is_suspected(text: str, sure: float, no_speech: float, suspected: str) -> None:
    heard = hearing(text, sure=sure, no_speech=no_speech)
    assert (
        " ".join(" ".join(word.text for word in heard.words[x.start : x.end]) for x in leaks(heard, PRIME)) == suspected
    )


@pytest.mark.parametrize(
    ("primed", "unprimed", "kept"),
    [
        # Said, and heard as a run-together figure without the prime: the same digits, so it was said.
        ("the action is five sixty-fourths", "The action is 564.", "the action is five sixty-fourths"),
        ("the action is five sixty-fourths", "The action is 5/64", "the action is five sixty-fourths"),
        # Another figure without the prime: that one is kept.
        ("the action is five sixty-fourths", "the action is 664", "the action is 664"),
        # Other words without the prime.
        ("the action is five sixty-fourths", "thanks for watching", "thanks for watching"),
        # Nothing without the prime.
        ("the action is five sixty-fourths", "", ""),
    ],
)
def test_what_is_kept(primed: str, unprimed: str, kept: str) -> None:
    assert settle(hearing(primed), hearing(unprimed), PRIME).text == kept


def test_only_the_suspected_stretch_is_replaced() -> None:
    said = "set it to eleven sixty-fourths and then"
    first = hearing(f"{said} the action is five sixty-fourths")
    second = hearing("set it to 1164 and then")
    assert settle(first, second, PRIME).text == said


def test_a_window_of_noise_comes_out_empty() -> None:
    first = hearing("the action is five sixty-fourths", no_speech=0.9)
    assert settle(first, hearing("I don't know.", no_speech=0.5), PRIME).text == ""


def test_no_prime_no_leak() -> None:
    assert leaks(hearing("the action is five sixty-fourths"), Prime.of("")) == []
