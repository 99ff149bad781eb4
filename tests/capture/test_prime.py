"""The prime is whole phrases, measures spelled out, within what the model takes."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from capture.prime import PROMPT_MARGIN, PROMPT_TOKENS, compose_prime, fit_prime, ingredients


def count(text: str) -> int:
    return len(text.split())


def test_a_general_bench() -> None:
    prime = compose_prime()
    assert "five sixty-fourths" in prime
    assert not re.search(r"\d", prime), "a figure in digits teaches the model to write digits"
    assert prime.endswith(".")


def test_the_trades_words_stand_before_the_measures_the_most_telling_nearest() -> None:
    prime = compose_prime(["string height", "saddle slot", "string height", " "])
    assert prime.startswith("The saddle slot, the string height. The action is")


def test_cutting_takes_the_least_telling_words_first() -> None:
    prime = compose_prime(["string height", "saddle slot"])
    fitted = fit_prime(prime, count, count(prime) - 1)
    assert fitted.startswith("The string height. The action is")


def test_an_ingredient_can_be_left_out() -> None:
    whole = compose_prime()
    for name in ingredients():
        without = compose_prime(leave_out=(name,))
        assert len(without) < len(whole)
        assert without.endswith(".")
    assert compose_prime(leave_out=ingredients()) == ""


def test_a_prime_that_fits_stays_as_it_is() -> None:
    prime = compose_prime(["string height"])
    assert fit_prime(prime, count, 1000) == prime


@given(st.lists(st.text("abcdefg ", min_size=1, max_size=30), max_size=80), st.integers(0, 250))
def test_no_prime_is_longer_than_its_limit(words: list[str], limit: int) -> None:
    prime = compose_prime(words)
    fitted = fit_prime(prime, count, limit)
    assert count(fitted) <= limit
    assert prime.casefold().endswith(fitted.casefold())


def test_a_prompt_may_take_half_of_what_the_decoder_holds() -> None:
    # Radford et al. 2022, section 2.3: the text context is 448 tokens; the reference code keeps half less one.
    assert PROMPT_TOKENS == 448 // 2 - 1
    assert 0 < PROMPT_MARGIN < PROMPT_TOKENS
