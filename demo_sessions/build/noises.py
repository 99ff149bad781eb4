"""Sounds of a workshop, made from seeded noise: the room, a scraper, a mallet, a small motor.

They are soft and plain on purpose. They keep the pauses from being digital silence, as no real room is.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from demo_sessions.build.script import Work
from demo_sessions.build.voices import Samples

ROOM_LEVEL = 0.0012
"""Root mean square of the room, about 58 dB below full scale."""
WORK_LEVEL = 0.012


def room_tone(length: int, rate: int, seed: int) -> Samples:
    """`length` samples of the room: noise that falls with frequency, and a little hum of the lights at 120 Hz."""
    hum = np.sin(2 * np.pi * 120 * np.arange(length) / rate)
    return np.asarray(ROOM_LEVEL * (_coloured(length, rate, 60, 2500, seed) + 0.15 * hum), np.float32)


def work_noise(work: Work, length: int, rate: int, seed: int) -> Samples:
    """`length` samples of somebody at work, faded in and out."""
    if work == "quiet" or length < rate:
        return np.zeros(length, np.float32)
    time = np.arange(length) / rate
    if work == "scrape":
        stroke = np.clip(np.sin(2 * np.pi * 0.9 * time), 0, None) ** 0.6
        sound = _coloured(length, rate, 1200, 7000, seed) * stroke
    elif work == "knock":
        since = time % 0.83
        sound = 4 * np.exp(-since * 60) * np.sin(2 * np.pi * 210 * since)
    else:
        sound = sum((np.sin(2 * np.pi * 95 * k * time) / k for k in (1, 2, 3, 5)), np.zeros(length))
        sound = 0.6 * sound + 0.4 * _coloured(length, rate, 500, 5000, seed)
    fade = np.clip(np.minimum(time, time[::-1]) / 0.35, 0, 1)
    return np.asarray(WORK_LEVEL * sound * fade, np.float32)


def _coloured(length: int, rate: int, low: float, high: float, seed: int) -> NDArray[np.float64]:
    """Noise between two frequencies (Hz) with a slope of -3 dB an octave; root mean square 1."""
    spectrum = np.fft.rfft(np.random.default_rng(seed).standard_normal(length))
    frequency = np.fft.rfftfreq(length, 1 / rate)
    shape = np.where((frequency >= low) & (frequency <= high), np.sqrt(low / np.maximum(frequency, low)), 0.0)
    sound = np.fft.irfft(spectrum * shape, length)
    return np.asarray(sound / np.sqrt(np.mean(sound**2)), np.float64)
