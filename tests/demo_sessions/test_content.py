"""What each demo must contain to show the whole of the tool, and that its figures are sound where they should be.

Factors: NIST Special Publication 811, appendix B.8 (inch 25.4 mm exactly, lbf ft 1.355818 N m, lbf in 0.1129848 N m,
psi 6.894757 kPa, bar 100 kPa; degF = 1.8 degC + 32). How far two statements may differ is the tests' own choice: half a
unit of the last digit said, or 2.5 % where the speaker hedges.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from demo_sessions.truth import load_truth, slugs

BRIDGE, SETTLED, PEDAL = "old-bustard-bridge", "old-bustard-settled", "seized-pedal"


def inches(mm: float) -> float:
    return mm / 25.4


def fahrenheit(celsius: float) -> float:
    return celsius * 1.8 + 32


AGREEING: list[tuple[str, str, str, Callable[[float], float], float]] = [
    (BRIDGE, "twenty-five and a half inches", "six hundred and forty-eight millimeters", inches, 0.5 / 25.4),
    (BRIDGE, "a hundred and eighty degrees Fahrenheit", "eighty-two Celsius", fahrenheit, 0.9),
    (BRIDGE, "a hundred and forty degrees Fahrenheit", "sixty degrees Celsius", fahrenheit, 0.9),
    (BRIDGE, "six sixty-fourths", "three thirty-seconds", lambda value: value, 0),
    (SETTLED, "a sixteenth of an inch", "one and a half millimeters", inches, 0.25 / 25.4),
    (PEDAL, "forty-eight degrees Fahrenheit", "nine degrees Celsius", fahrenheit, 0.9),
    (PEDAL, "one hundred and ninety-four degrees Fahrenheit", "ninety degrees Celsius", fahrenheit, 0.9),
    (PEDAL, "six and three quarter inches", "one hundred and seventy millimeters", inches, 0.025 * 6.75),
    (PEDAL, "thirty foot pounds", "forty newton meters", lambda value: value / 1.355818, 0.5),
    (PEDAL, "four bar", "sixty P S I", lambda value: value * 6.894757 / 100, 0.5),
]

DISAGREEING: list[tuple[str, str, str, Callable[[float], float]]] = [
    (BRIDGE, "six inches", "a hundred and eighty millimeters", inches),
    (PEDAL, "two hundred and ten inch pounds", "thirty-five newton meters", lambda value: value / 0.1129848),
]


def values(slug: str, quote: str) -> float:
    found = {one.value for one in load_truth(slug).measures if one.quote == quote}
    assert len(found) == 1, (quote, found)
    return found.pop()


@pytest.mark.parametrize(("slug", "one", "other", "convert", "apart"), AGREEING)
def test_statements_in_two_units_agree(
    slug: str, one: str, other: str, convert: Callable[[float], float], apart: float
) -> None:
    assert abs(values(slug, one) - convert(values(slug, other))) <= apart


@pytest.mark.parametrize(("slug", "one", "other", "convert"), DISAGREEING)
def test_faulty_conversions_are_far_out(slug: str, one: str, other: str, convert: Callable[[float], float]) -> None:
    assert abs(convert(values(slug, other)) / values(slug, one) - 1) > 0.1
    faults = [fault for fault in load_truth(slug).faults if one in fault.quote and other in fault.quote]
    assert [fault.kind for fault in faults] == ["conversion"]


def test_the_faulty_sum_is_wrong() -> None:
    (fault,) = (one for one in load_truth(SETTLED).faults if one.kind == "arithmetic")
    whole, off, left = (
        one.value
        for one in load_truth(SETTLED).measures
        if one.quote in fault.quote and one.item == ("saddle",) and one.start >= fault.start
    )
    assert whole - off != left


def test_sound_sums_are_right() -> None:
    """Two passes make the depth; the saddle loses twice what the string drops half way (common practice, no source)."""
    assert 2 * values(BRIDGE, "three thirty-seconds") == values(BRIDGE, "three sixteenths")
    assert 2 * values(SETTLED, "one sixty-fourth") == values(SETTLED, "one thirty-second")
    assert values(SETTLED, "seven sixty-fourths") - values(BRIDGE, "six sixty-fourths") == values(
        SETTLED, "one sixty-fourth"
    )


def test_the_first_film_shows_everything() -> None:
    truth = load_truth(BRIDGE)
    assert len(truth.measures) >= 14
    assert {"inch", "thou", "millimeter", "degF", "degC", "minute", "hour"} <= {one.unit for one in truth.measures}
    for part in ("sixteenth", "thirty-second", "sixty-fourth", "eighth", "thousandths"):
        assert any(part in one.quote for one in truth.measures), part
    assert {one.kind for one in truth.faults} == {"conversion", "implausible"}
    assert [one.scope for one in truth.corrections] == ["this_session", "this_session"]
    assert len(truth.steps) >= 8
    assert truth.cautions
    assert truth.doubts
    assert truth.follow_ups


def test_the_second_film_takes_back_something_of_the_first() -> None:
    first, second = load_truth(BRIDGE), load_truth(SETTLED)
    assert (first.subject, first.trade) == (second.subject, second.trade)
    assert first.date < second.date
    (correction,) = second.corrections
    assert correction.scope == "earlier_session"
    assert correction.withdraws in {one.quote for one in first.measures if one.stands}


def test_the_third_is_of_another_trade_with_torque_and_temperature() -> None:
    truth = load_truth(PEDAL)
    assert truth.trade != load_truth(BRIDGE).trade
    assert {"newton*meter", "foot_pound", "inch*pound_force", "degC", "degF"} <= {one.unit for one in truth.measures}
    assert {one.kind for one in truth.faults} == {"conversion", "dimension"}
    assert truth.corrections


@pytest.mark.parametrize("slug", slugs())
def test_faults_stand_uncorrected(slug: str) -> None:
    truth = load_truth(slug)
    for fault in truth.faults:
        concerned = [one for one in truth.measures if one.quote in fault.quote and one.start >= fault.start]
        assert concerned
        assert all(one.stands for one in concerned[:1])
