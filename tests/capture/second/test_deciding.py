"""What was first heard stands unless a rival is clearly ahead; near ties are marked."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from capture.second.deciding import Scored, confidence_of, decide

FIRST = Scored("two point to", "", -5.0, 0.0)


def test_a_level_rival_that_makes_sense_wins() -> None:
    outcome = decide([FIRST, Scored("two point two", "to and two sound alike", -5.0, 3.8)], 0.5)
    assert [one.text for one in outcome.readings] == ["two point two", "two point to"]
    assert not outcome.near_tie


def test_a_rival_a_little_ahead_changes_nothing_and_is_marked() -> None:
    outcome = decide([FIRST, Scored("two point two", "", -4.8, 0.0)], 0.9)
    assert outcome.readings[0] is FIRST
    assert outcome.near_tie


def test_sense_alone_does_not_overrule_the_sound() -> None:
    outcome = decide([FIRST, Scored("twenty-two", "", -30.0, 100.0)], 0.9)
    assert outcome.readings[0] is FIRST


def test_a_figure_without_rivals_stands() -> None:
    outcome = decide([FIRST], 0.99)
    assert outcome.readings == (FIRST,)
    assert not outcome.near_tie


scores = st.floats(-40, 0)


@given(st.lists(st.tuples(scores, st.floats(-2, 8)), min_size=1, max_size=7), st.floats(0, 1))
def test_every_reading_is_kept_once_and_the_confidence_is_a_probability(
    drawn: list[tuple[float, float]], sureness: float
) -> None:
    readings = [Scored(str(at), "", sound, sense) for at, (sound, sense) in enumerate(drawn)]
    outcome = decide(readings, sureness)
    assert sorted(one.text for one in outcome.readings) == sorted(one.text for one in readings)
    assert 0 <= outcome.confidence <= 1
    rivals = [one.score for one in outcome.readings[1:]]
    assert rivals == sorted(rivals, reverse=True)


@given(st.floats(-10, 10), st.floats(-10, 10), st.floats(0.01, 0.99))
def test_the_further_ahead_the_surer(one: float, other: float, sureness: float) -> None:
    low, high = sorted((one, other))
    assert confidence_of(low, sureness) <= confidence_of(high, sureness)
