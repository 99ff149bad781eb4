"""`spokeshave figure`: typed figures in, workings with their source out."""

from __future__ import annotations

import pytest
from click.testing import CliRunner

from capture.errors import SpokeshaveError
from desk.cli import spokeshave


def figure(*words: str) -> str:
    done = CliRunner().invoke(spokeshave, ["figure", *words], catch_exceptions=False)
    assert done.exit_code == 0, done.output
    return done.output


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        (("radius", "14 in", "1/4 in"), "98.1250 in = 2492.38 mm = 98 1/8 in"),
        (("radius", "355.6 mm", "6.35 mm"), "98.1250 in"),
        (("rise", "25 ft", "15 in"), "≈ 3/32 in"),
        (("rise", "twenty five feet", "fifteen inches"), "2.38 mm"),
        (("frets", "650 mm", "--last", "12"), "fret 12  12.7953 in = 325.00 mm"),
        (("tension", "0.012 in", "25.5 in", "E4"), "104.4 N (23.5 lbf)"),
        (("tension", "12 thou", "647.7 mm", "329.628 Hz"), "104.4 N (23.5 lbf)"),
        (("movement", "9.15 in", "white fir", "8", "11"), "0.0673 in = 1.71 mm"),
        (("movement", "9.15 in", "cherry", "8", "11", "--quartersawn"), "9.15 × 0.00126 × (11 − 8)"),
        (("moisture", "70 F", "45"), "8.5 %"),
        (("moisture", "21 °C", "45"), "8.5 %"),
        (("drill", "7"), "0.2010 in = 5.11 mm"),
        (("drill", "f"), "0.2570 in"),
        (("drill", "6.35 mm"), "E or 1/4"),
        (("wire", "20"), "music wire gauge"),
        (("screw", "8"), "0.1640 in = 4.17 mm"),
        (("thread", "1/4-20"), "Tap drill: #7"),
        (("pitch", "E2"), "82.407 Hz"),
        (("pitch", "A4", "--a4", "442"), "442.000 Hz"),
        (("cents", "442 Hz", "A4"), "7.85 cents"),
    ],
)
def test_a_working(words: tuple[str, ...], expected: str) -> None:
    shown = figure(*words)
    assert expected in shown
    assert "working: " in shown
    assert "source: " in shown


@pytest.mark.parametrize(
    ("words", "complaint"),
    [
        (("rise", "15 parsecs", "15 in"), "no unit on the list"),
        (("radius", "14 kg", "1/4 in"), "different things"),
        (("radius", "1 in", "14 in"), "more than half the chord"),
        (("moisture", "21", "45"), "has no unit"),
        (("movement", "10 in", "unobtainium", "8", "11"), "take one of"),
        (("drill", "#99"), "there is no drill"),
        (("drill", "zebra"), "there is no drill"),
        (("thread", "M7"), "write its pitch"),
        (("pitch", "H4"), "is no note"),
    ],
)
def test_what_cannot_be_worked_out_is_told_in_one_line(words: tuple[str, ...], complaint: str) -> None:
    with pytest.raises(SpokeshaveError, match=complaint) as told:
        figure(*words)
    assert "\n" not in str(told.value)
