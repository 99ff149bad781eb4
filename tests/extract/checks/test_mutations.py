"""A true figure with one thing changed raises the right kind of doubt; untouched, it raises none."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import example, given, settings
from hypothesis import strategies as st

from extract.checks import run_checks
from extract.magnitudes import ANY, Magnitude, magnitudes
from extract.trade import load_trade
from extract.units import unit_named
from tests.extract.checks.records import record_of

_SWAPPED = {
    "length": "volt",
    "mass": "volt",
    "torque": "millimeter",
    "temperature": "kilogram",
    "current": "millimeter",
}
_TERMS = sorted(
    {
        row
        for rows in magnitudes().by_thing.values()
        for row in rows
        if row.what == ANY and row.low > 0 and " " in row.thing and not row.context and len(rows) == 1
        if row.kind in _SWAPPED
    },
    key=lambda row: row.thing,
)
"""Terms of several words with a single row, so that nothing else may be meant."""
_GENERAL = load_trade("general")


def _said(row: Magnitude, value: float, unit: str | None = None) -> list[str]:
    symbol = unit_named(unit or row.unit).symbol
    text = f"{value:.4g}" if 1e-4 <= value < 10_000 else f"{value:.0f}"
    record = record_of((f"The {row.thing} is [{text} {symbol} | {text} {symbol}].",))
    return [one.kind for one in run_checks(record, _GENERAL) if one.severity == "stop"]


def _middle(row: Magnitude) -> float:
    return float((row.low * row.high) ** 0.5)


@settings(max_examples=80, deadline=None)
@given(row=st.sampled_from(_TERMS), share=st.floats(-0.4, 0.4))
@example(row=next(row for row in _TERMS if row.thing == "door clearance"), share=0.4)
def test_a_usual_figure_passes(row: Magnitude, share: float) -> None:
    assert _said(row, _middle(row) * (row.high / row.low) ** share) == []


@settings(max_examples=80, deadline=None)
@given(row=st.sampled_from([one for one in _TERMS if one.high < 900]), share=st.floats(0.7, 0.95))
def test_a_zero_too_many_is_stopped(row: Magnitude, share: float) -> None:
    assert _said(row, row.high * share * 10) == ["implausible"]


@settings(max_examples=80, deadline=None)
@given(row=st.sampled_from([one for one in _TERMS if one.low < _middle(one)]))
def test_a_unit_of_another_kind_is_stopped(row: Magnitude) -> None:
    assert _said(row, max(2, round(_middle(row))), _SWAPPED[row.kind]) == ["dimension"]


@settings(max_examples=60, deadline=None)
@given(
    first=st.integers(10, 99),
    second=st.integers(10, 99),
    words=st.sampled_from(["plus {b} makes {r}", "less {b} leaves {r}", "and another {b} makes {r}"]),
    factor=st.sampled_from([Fraction(5, 4), Fraction(4, 5), Fraction(3, 2)]),
)
def test_a_wrong_sum_is_stopped_and_the_right_one_is_not(first: int, second: int, words: str, factor: Fraction) -> None:
    a, b = max(first, second) + 5, min(first, second)
    right = Fraction(a - b if "less" in words else a + b)

    def stops(result: Fraction) -> list[str]:
        text = f"{float(result):.4g}"
        line = words.format(b=f"[{b} mm | {b} mm]", r=f"[{text} mm | {text} mm]")
        record = record_of((f"I have [{a} mm | {a} mm] {line}.",))
        return [one.kind for one in run_checks(record, _GENERAL) if one.severity == "stop"]

    assert stops(right) == []
    assert stops(right * factor) == ["arithmetic"]


@settings(max_examples=60, deadline=None)
@given(sixteenths=st.integers(2, 40), other=st.sampled_from([Fraction(1, 2), Fraction(2), Fraction(4, 3)]))
def test_another_denominator_makes_a_conversion_wrong(sixteenths: int, other: Fraction) -> None:
    exact = Fraction(sixteenths, 16) * Fraction(254, 10)

    def stops(value: Fraction) -> list[str]:
        whole, part = divmod(Fraction(sixteenths, 16), 1)
        inches = f"{whole} {part}" if whole and part else f"{part or whole}"
        record = record_of(
            (f"It's [{inches} inch | {inches} in], that's [{float(value):.1f} mm | {float(value):.1f} mm].",)
        )
        return [one.kind for one in run_checks(record, _GENERAL) if one.severity == "stop"]

    assert stops(exact) == []
    assert stops(exact * other) == ["conversion"]
