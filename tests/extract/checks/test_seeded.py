"""What holds for any figures: a wrong half, difference or restatement is stopped, the right one never."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from extract.checks import run_checks
from extract.checks.linear import conversion
from extract.trade import load_trade
from tests.extract.checks.records import record_of

_PAIRS = [("inch", "in", "millimeter", "mm"), ("pound", "lb", "kilogram", "kg"), ("psi", "psi", "bar", "bar")]
_RESTATED = ["that's", "which is", "in other words", "or in metric", "which comes to", "that's about"]
_HALVES = ["half of that is", "halve it and you get"]
_tenths = st.integers(21, 9999).map(lambda tenths: Fraction(tenths, 10))
_factors = st.sampled_from([Fraction(1, 10), Fraction(2, 3), Fraction(3, 2), Fraction(2), Fraction(10)])


def _stops(line: str) -> list[str]:
    found = run_checks(record_of((line,)), load_trade("general"))
    return [one.kind for one in found if one.severity == "stop" and one.kind in ("conversion", "arithmetic")]


def _text(value: Fraction) -> str:
    return f"{float(value):.2f}".rstrip("0").rstrip(".")


@settings(max_examples=60, deadline=None)
@given(value=_tenths, pair=st.sampled_from(_PAIRS), words=st.sampled_from(_RESTATED), factor=_factors)
def test_a_wrong_restatement_is_stopped_and_the_right_one_is_not(
    value: Fraction, pair: tuple[str, str, str, str], words: str, factor: Fraction
) -> None:
    unit, symbol, other, its_symbol = pair
    convert = conversion(unit, other)
    assert convert is not None
    exact, first = convert(value), _text(value)
    right, wrong = (_text(figure) for figure in (exact, exact * factor))
    said = f"It reads [{first} | {first} {symbol}], {words}"
    assert _stops(f"{said} [{right} | {right} {its_symbol}].") == []
    assert _stops(f"{said} [{wrong} | {wrong} {its_symbol}].") == ["conversion"]


@settings(max_examples=40, deadline=None)
@given(value=_tenths, words=st.sampled_from(_HALVES), factor=st.sampled_from([Fraction(3, 4), Fraction(3, 2)]))
def test_a_wrong_half_is_stopped_and_the_right_one_is_not(value: Fraction, words: str, factor: Fraction) -> None:
    first, right, wrong = (_text(figure) for figure in (value, value / 2, value / 2 * factor))
    said = f"It reads [{first} | {first} mm], {words}"
    assert _stops(f"{said} [{right} | {right} mm].") == []
    assert _stops(f"{said} [{wrong} | {wrong} mm].") == ["arithmetic"]


@settings(max_examples=40, deadline=None)
@given(larger=_tenths, part=st.integers(1, 9), factor=st.sampled_from([Fraction(3, 4), Fraction(3, 2)]))
def test_a_wrong_difference_is_stopped_and_the_right_one_is_not(larger: Fraction, part: int, factor: Fraction) -> None:
    smaller = larger * part / 10
    first, second, right, wrong = (
        _text(figure) for figure in (larger, smaller, larger - smaller, (larger - smaller) * factor)
    )
    said = f"I had [{first} | {first} mm] less [{second} | {second} mm], that leaves"
    assert _stops(f"{said} [{right} | {right} mm].") == []
    assert _stops(f"{said} [{wrong} | {wrong} mm].") == ["arithmetic"]
