"""A window is heard again where its first hearing can't be trusted, and the better founded hearing is kept."""

from __future__ import annotations

import pytest

from capture.leaks import Prime
from capture.options import HearingOptions
from capture.trust import LADDER, UNPRIMED, Manner, trusted
from capture.words import Hearing, Piece

PRIME = Prime.of("The action is five sixty-fourths, treble side.")
OPTIONS = HearingOptions()


def hearing(text: str, *, sure: float = -0.2, no_speech: float = 0.0, loop: bool = False) -> Hearing:
    words = tuple(Piece(word, number * 0.4, number * 0.4 + 0.3, 0.9) for number, word in enumerate(text.split()))
    return Hearing(words, sure, no_speech, 9.0 if loop else 1.5)


class Again:
    """Gives hearings from a list, and remembers how they were asked for."""

    def __init__(self, *hearings: Hearing) -> None:
        self._hearings = list(hearings)
        self.asked: list[Manner] = []

    def __call__(self, manner: Manner) -> Hearing:
        self.asked.append(manner)
        return self._hearings.pop(0)


def test_a_good_first_hearing_is_kept_and_nothing_is_heard_again() -> None:
    again = Again()
    assert trusted(hearing("set the fence"), again, PRIME, OPTIONS).text == "set the fence"
    assert again.asked == []


def test_where_the_model_says_that_nothing_was_said_nothing_was() -> None:
    assert trusted(hearing("you", sure=-1.2, no_speech=0.8), Again(), PRIME, OPTIONS).text == ""


def test_a_sure_hearing_stands_against_a_guess_of_silence() -> None:
    assert trusted(hearing("it is bone", sure=-0.3, no_speech=0.8), Again(), PRIME, OPTIONS).text == "it is bone"


@pytest.mark.parametrize("first", [hearing("so so so", loop=True), hearing("mumble", sure=-1.5)])
def test_a_loop_or_a_guess_is_heard_again_without_the_prime(first: Hearing) -> None:
    again = Again(hearing("sand it flat"))
    assert trusted(first, again, PRIME, OPTIONS).text == "sand it flat"
    assert again.asked == [UNPRIMED]


def test_the_ladder_is_climbed_to_the_first_steady_rung() -> None:
    again = Again(hearing("so so so", loop=True), hearing("sand it flat"))
    assert trusted(hearing("so so", loop=True), again, PRIME, OPTIONS).text == "sand it flat"
    assert again.asked == list(LADDER[:2])


def test_of_many_poor_hearings_the_likeliest_that_does_not_loop_is_kept() -> None:
    again = Again(hearing("b", sure=-1.6), hearing("c", sure=-1.3), hearing("d d d", sure=-0.1, loop=True))
    assert trusted(hearing("a", sure=-1.8), again, PRIME, OPTIONS).text == "c"


def test_the_likeliest_of_many_loops_is_kept() -> None:
    again = Again(*(hearing(text, sure=sure, loop=True) for text, sure in (("b", -0.9), ("c", -0.5), ("d", -0.8))))
    assert trusted(hearing("a", loop=True, sure=-0.7), again, PRIME, OPTIONS).text == "c"


def test_a_leak_is_settled_by_a_hearing_without_the_prime() -> None:
    again = Again(hearing("thanks for coming"))
    assert trusted(hearing("the action is five sixty-fourths"), again, PRIME, OPTIONS).text == "thanks for coming"
    assert again.asked == [UNPRIMED]


def test_no_rung_draws_at_random_or_knows_the_prime() -> None:
    assert not any(manner.primed for manner in LADDER)
