"""Frets, pitch and strings, held against printed tables, a standard and a physics text."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from extract.working import WorkingError
from extract.working.frets import from_nut
from extract.working.pitch import cents, hertz
from extract.working.strings import mass_per_length, tension

# A printed table for a 25 in (635 mm) scale, distance left to the bridge, frets 1 to 10.
PRINTED_INCHES = (23.597, 22.272, 21.022, 19.843, 18.729, 17.678, 16.685, 15.749, 14.865, 14.031)
PRINTED_MM = (599.360, 565.721, 533.969, 504.000, 475.712, 449.013, 423.812, 400.025, 377.573, 356.382)


@pytest.mark.parametrize(("scale", "printed"), [(25.0, PRINTED_INCHES), (635.0, PRINTED_MM)])
def test_every_fret_of_a_printed_table(scale: float, printed: tuple[float, ...]) -> None:
    assert [round(scale - from_nut(scale, n), 3) for n in range(1, 11)] == list(printed)


def test_a_builders_worked_figures_by_the_17_817_rule() -> None:
    # A builder's page, 34 in scale: fret 1 at 1.9083; the rule's rounded constant puts fret 3 at 5.4096, exact 5.4095.
    assert from_nut(34, 1) == pytest.approx(34 / 17.817, abs=0.0001)
    assert from_nut(34, 3) == pytest.approx(5.4095, abs=0.0001)


@given(st.floats(50, 2000))
def test_the_twelfth_is_half_and_the_twenty_fourth_three_quarters(scale: float) -> None:
    assert from_nut(scale, 12) == pytest.approx(scale / 2)
    assert from_nut(scale, 24) == pytest.approx(scale * 3 / 4)


# librosa 0.11.0 prints midi_to_hz for 36 to 47 in its documentation; A4 = 440 Hz is ISO 16:1975.
LIBROSA = {
    "C2": 65.406, "C#2": 69.296, "D2": 73.416, "D#2": 77.782, "E2": 82.407, "F2": 87.307,
    "F#2": 92.499, "G2": 97.999, "G#2": 103.826, "A2": 110.0, "A#2": 116.541, "B2": 123.471,
}  # fmt: skip


@pytest.mark.parametrize(("note", "frequency"), LIBROSA.items())
def test_an_octave_of_notes_as_a_reference_library_prints_it(note: str, frequency: float) -> None:
    assert hertz(note) == pytest.approx(frequency, abs=0.0005)


def test_flats_and_sharps_meet() -> None:
    assert hertz("Bb2") == pytest.approx(hertz("A#2"))
    assert hertz("A4", 442) == 442


@pytest.mark.parametrize(
    ("frequency", "against", "expected"),
    # 701.955 is the just fifth of every textbook of acoustics; the others follow from the definition.
    [(3, 2, 701.955), (442, 440, 7.85), (441, 440, 3.93), (880, 440, 1200), (440, 880, -1200)],
)
def test_cents(frequency: float, against: float, expected: float) -> None:
    assert cents(frequency, against) == pytest.approx(expected, abs=0.005)


@pytest.mark.parametrize("note", ["H4", "A", "4A", "", "A##4"])
def test_a_note_needs_its_octave(note: str) -> None:
    with pytest.raises(WorkingError):
        hertz(note)


def test_weight_and_wave_of_a_physics_text() -> None:
    # OpenStax University Physics volume 1, section 16.3: v = √(T/μ), f = v/(2L). A physics exercise: a string of 0.90 m
    # and 3.6 g under 520 N sounds at 200.3 Hz.
    assert tension(0.90, 200.3, 0.0036 / 0.90) == pytest.approx(520, rel=0.001)


def test_a_plain_steel_first_string() -> None:
    # Computed from the definition for rho = 7850 kg/m³: 0.012 in at E4 over 647.7 mm.
    assert tension(0.6477, hertz("E4"), mass_per_length(0.012 * 0.0254)) == pytest.approx(104.4, abs=0.1)
