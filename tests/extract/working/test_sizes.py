"""Drills, wire, screws and threads, held against GNU units (an outside program) and published charts."""

from __future__ import annotations

import shutil
import subprocess
from fractions import Fraction

import pytest

from extract.working import WorkingError
from extract.working.drills import drill_named, drills, nearest_drills
from extract.working.screws import screw_diameter, thread_named
from extract.working.wire import american, diameters, gauge_number, gauges, nearest_gauge

needs_units = pytest.mark.skipif(shutil.which("units") is None, reason="GNU units is not installed")


def by_gnu_units(expressions: list[str]) -> list[float]:
    """Each expression in inches, by GNU units."""
    asked = "".join(f"{one}\nin\n" for one in expressions)
    told = subprocess.run(["units", "-t"], input=asked, capture_output=True, text=True, check=True)
    return [float(line) for line in told.stdout.split()]


@needs_units
def test_every_numbered_and_lettered_drill_as_gnu_units_has_it() -> None:
    named = [drill for drill in drills() if "/" not in drill.name and drill.name != "1"]
    asked = [f"drillgauge({one.name[1:]})" if one.name[0] == "#" else f"drill{one.name}" for one in named]
    told = by_gnu_units(asked)
    assert len(named) == 80 + 26
    # GNU units interpolates a few numbers, so it is held to half of the last printed digit.
    assert [round(value, 4) for value in told] == pytest.approx([float(one.inches) for one in named], abs=0.00051)


@pytest.mark.parametrize(
    ("number", "inches"),
    # A stored tap and drill chart, read apart from the table.
    [
        (7, "0.2010"), (10, "0.1935"), (18, "0.1695"), (25, "0.1495"),
        (29, "0.1360"), (36, "0.1065"), (43, "0.0890"), (50, "0.0700"),
    ],
)  # fmt: skip
def test_drills_of_a_tap_chart(number: int, inches: str) -> None:
    assert drill_named(f"#{number}").inches == Fraction(inches)


def test_drill_names() -> None:
    assert drill_named("no. 7") == drill_named("7") == drill_named("#7")
    assert drill_named("e").inches == drill_named("16/64").inches == Fraction(1, 4)
    assert [one.name for one in nearest_drills(Fraction(1, 4), 1)] == ["E or 1/4"]


@pytest.mark.parametrize("name", ["#81", "AA", "3/128", "1/0", "", "0"])
def test_what_is_no_drill(name: str) -> None:
    with pytest.raises(WorkingError):
        drill_named(name)


@needs_units
def test_wire_gauges_as_gnu_units_has_them() -> None:
    numbers = range(0, 37)
    assert by_gnu_units([f"wiregauge({n})" for n in numbers]) == pytest.approx(
        [american(n) for n in numbers], abs=0.00005
    )
    british = gauges()["british"].inches
    told = by_gnu_units([f"brwiregauge({n})" for n in numbers])
    assert told == pytest.approx([british[n] for n in numbers], abs=0.00005)


def test_the_ends_of_the_american_gauge() -> None:
    # NBS Handbook 100 section 2.1: No. 0000 is 0.4600 in, No. 36 is 0.0050 in, and 38 sizes lie between.
    assert american(gauge_number("0000")) == pytest.approx(0.46)
    assert american(36) == pytest.approx(0.005)


def test_twenty_gauge_is_a_different_wire_in_each_system() -> None:
    # The library fluids 1.3.1, every system that it calls 20.
    assert {name: round(size, 4) for name, size in diameters(20).items()} == {
        "american": 0.032, "british": 0.036, "steel": 0.0348, "music": 0.045,
    }  # fmt: skip


@pytest.mark.parametrize(("text", "number"), [("20", 20), ("#8", 8), ("00", -1), ("2/0", -1), ("4/0", -3), ("0", 0)])
def test_gauge_numbers(text: str, number: int) -> None:
    assert gauge_number(text) == number


@pytest.mark.parametrize("text", ["", "twenty", "-3", "1/2"])
def test_what_is_no_gauge_number(text: str) -> None:
    with pytest.raises(WorkingError):
        gauge_number(text)


def test_the_nearest_gauge() -> None:
    assert nearest_gauge(gauges()["music"], Fraction("0.0131")) == 4


@needs_units
def test_screw_numbers_as_gnu_units_has_them() -> None:
    told = by_gnu_units([f"screwgauge({n})" for n in range(0, 15)])
    assert told == pytest.approx([float(screw_diameter(n)) for n in range(0, 15)])


@pytest.mark.parametrize(
    ("name", "pitch"),
    # 25.4 mm over the threads to the inch; metric coarse pitches of ISO 261 as stored charts print them.
    [("1/4-20", "1.27"), ("#10-32", "0.79375"), ("M5", "0.8"), ("m6", "1"), ("M8x1", "1"), ("M2.5", "0.45")],
)
def test_pitches(name: str, pitch: str) -> None:
    assert thread_named(name).pitch == Fraction(pitch)


def test_a_number_ten_is_no_m5() -> None:
    ten, five = thread_named("#10-32"), thread_named("M5")
    assert ten.pitch != five.pitch
    assert float(ten.diameter) == pytest.approx(4.826)


@pytest.mark.parametrize(("name", "tap"), [("M6", "5.0 mm"), ("1/4-20", "#7"), ("#8-32", "#29"), ("M6x0.75", None)])
def test_tap_drills_of_the_usual_charts(name: str, tap: str | None) -> None:
    assert thread_named(name).tap == tap


@pytest.mark.parametrize("name", ["M7", "1/4-21", "#9-32", "20", "", "M0x"])
def test_what_is_no_thread(name: str) -> None:
    with pytest.raises(WorkingError):
        thread_named(name)
