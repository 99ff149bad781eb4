"""Mixing down keeps what any channel heard."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from capture.mixing import Mixer
from tests.capture.making import Samples

RATE = 16_000


def noise(seed: int, level: float = 0.1) -> Samples:
    return (np.random.default_rng(seed).normal(0, level, RATE)).astype(np.float32)


def level(samples: Samples) -> float:
    return float(np.sqrt((samples.astype(np.float64) ** 2).mean()))


def test_one_channel_passes_unchanged() -> None:
    voice = noise(1)
    assert np.array_equal(Mixer().mix(voice[None, :]), voice)


def test_two_like_channels_are_their_mean() -> None:
    voice = noise(1)
    assert Mixer().mix(np.stack([voice, voice])) == pytest.approx(voice, abs=1e-6)


def test_two_microphones_are_both_heard() -> None:
    left, right = noise(1), noise(2)
    mixed = Mixer().mix(np.stack([left, right]))
    for voice in (left, right):
        assert np.corrcoef(mixed, voice)[0, 1] > 0.6


@given(st.integers(2, 6), st.integers(0, 5), st.floats(0.01, 0.3), st.sampled_from([0.0, 1.0, -1.0]))
def test_the_loudest_channel_is_never_lost(channels: int, live: int, loud: float, others: float) -> None:
    voice = noise(3, loud)
    planes = np.zeros((channels, RATE), dtype=np.float32) + others * voice
    planes[live % channels] = voice
    mixed = Mixer().mix(planes)
    # Less than a plain mean of two unlike microphones (0.71) would be a loss.
    assert level(mixed) >= 0.6 * level(voice)
    assert abs(np.corrcoef(mixed, voice)[0, 1]) > 0.99


def test_a_change_of_channel_makes_no_click() -> None:
    mixer = Mixer()
    steady = np.full(RATE, 0.3, dtype=np.float32)
    mixer.mix(np.stack([steady, 0 * steady]))
    mixed = mixer.mix(np.stack([steady, steady / 2]))
    assert np.abs(np.diff(mixed)).max() < 0.01


def test_silence_stays_silence() -> None:
    assert not Mixer().mix(np.zeros((2, RATE), dtype=np.float32)).any()
