"""Figures read while they are typed. Conversions: NIST SP 811 (2008), B.8: 1 in = 25.4 mm exactly."""

from __future__ import annotations

import pytest

from tests.desk.proof.conftest import Asking


@pytest.mark.parametrize(
    ("item", "typed", "display", "other"),
    [
        ("m-action-1", "7/64 in", "7/64\u00a0in", "2.8\u00a0mm"),
        ("m-action-1", "7/64", "7/64\u00a0in", "2.8\u00a0mm"),
        ("m-relief-0", "0.010 in", "0.010\u00a0in", "0.25\u00a0mm"),
        ("m-nut-1", "406 mm", "406\u00a0mm", ""),
    ],
)
def test_a_figure_is_read_with_its_unit_and_its_counterpart(
    asking: Asking, item: str, typed: str, display: str, other: str
) -> None:
    told = asking.person.get(f"{asking.home}reads", params={"item": item, "text": typed}).json()
    assert (told["display"], told["problem"]) == (display, "")
    assert told["other"].startswith(other)


@pytest.mark.parametrize("typed", ["5 parsecs", "seven or so bananas", "7/0 in", "<b>", "\x00", "9" * 5000])
def test_what_is_no_figure_is_told_in_one_line(asking: Asking, typed: str) -> None:
    told = asking.person.get(f"{asking.home}reads", params={"item": "m-nut-1", "text": typed}).json()
    assert told["problem"] or told["display"]
    assert "\n" not in told["problem"]


def test_a_unit_of_another_kind_is_told_and_may_be_overruled(asking: Asking) -> None:
    told = asking.person.get(f"{asking.home}reads", params={"item": "m-scale-0", "text": "20 °C"}).json()
    assert "temperature" in told["problem"]
    assert told["overrule"]
