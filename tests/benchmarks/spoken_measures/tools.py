"""Noise of a workshop, made from a seed: a sander, a bandsaw, a hammer; and speech with noise under it."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from capture.mixing import Samples
from tests.benchmarks.spoken_measures.sound import RATE

LOUD = 0.12
"""Root mean square of a tool near the camera."""


def sander(length: int, seed: int) -> Samples:
    """A random-orbit sander: a motor at 190 Hz with its overtones, and broad hiss that swells with the pressure."""
    time = np.arange(length) / RATE
    motor = sum((np.sin(2 * np.pi * 190 * k * time + k) / k for k in range(1, 12)), np.zeros(length))
    press = 0.6 + 0.4 * np.sin(2 * np.pi * 0.4 * time) ** 2
    return _loud(0.5 * motor + press * _band(length, 800, 7500, seed))


def bandsaw(length: int, seed: int) -> Samples:
    """A bandsaw: a hum at 120 Hz, a blade that whines at 900 Hz and wanders, and wood that tears in bursts."""
    time = np.arange(length) / RATE
    wander = np.cumsum(900 + 40 * np.sin(2 * np.pi * 0.7 * time)) / RATE
    hum = sum((np.sin(2 * np.pi * 120 * k * time) / k for k in range(1, 8)), np.zeros(length))
    tear = _band(length, 300, 5000, seed) * np.clip(np.sin(2 * np.pi * 0.25 * time), 0, 1)
    return _loud(hum + 0.7 * np.sin(2 * np.pi * wander) + 1.5 * tear)


def hammer(length: int, seed: int) -> Samples:
    """Blows at uneven times, each a ring of the steel and a thud of the bench."""
    random = np.random.default_rng(seed)
    sound = np.zeros(length)
    at = 0
    while at < length:
        since = np.arange(min(length - at, RATE // 2)) / RATE
        blow = np.exp(-since * 40) * np.sin(2 * np.pi * 180 * since)
        blow += 0.5 * np.exp(-since * 18) * np.sin(2 * np.pi * random.uniform(2300, 2700) * since)
        sound[at : at + len(since)] += random.uniform(0.5, 1) * blow
        at += round(random.uniform(0.25, 1.4) * RATE)
    return _loud(sound + 0.003 * _band(length, 60, 4000, seed))


TOOLS: tuple[Callable[[int, int], Samples], ...] = (sander, bandsaw, hammer)


def tool_noise(seconds: int) -> Samples:
    """The three tools in turn, twenty seconds each, with three seconds of near silence between them."""
    turn, rest = 20 * RATE, 3 * RATE
    pieces: list[Samples] = []
    number = 0
    while sum(len(piece) for piece in pieces) < seconds * RATE:
        pieces.append(TOOLS[number % len(TOOLS)](turn, number))
        pieces.append(np.asarray(0.001 * _band(rest, 60, 3000, number), np.float32))
        number += 1
    return np.concatenate(pieces)[: seconds * RATE]


def under(speech: Samples, decibels: float) -> Samples:
    """Speech with tool noise under it, `decibels` softer than the speech (measured where somebody speaks)."""
    noise = tool_noise(len(speech) // RATE + 1)[: len(speech)]
    loud = speech[np.abs(speech) > 0.02]
    gain = float(np.sqrt(np.mean(loud**2)) / np.sqrt(np.mean(noise**2))) * 10 ** (-decibels / 20)
    mixed = speech + gain * noise
    return np.asarray(mixed / max(1.0, float(np.abs(mixed).max()) / 0.95), np.float32)


def _band(length: int, low: float, high: float, seed: int) -> NDArray[np.float64]:
    """Noise between two frequencies (Hz), root mean square 1."""
    spectrum = np.fft.rfft(np.random.default_rng(seed).standard_normal(length))
    frequency = np.fft.rfftfreq(length, 1 / RATE)
    sound = np.fft.irfft(np.where((frequency >= low) & (frequency <= high), spectrum, 0), length)
    return np.asarray(sound / np.sqrt(np.mean(sound**2)), np.float64)


def _loud(sound: NDArray[np.float64]) -> Samples:
    return np.asarray(np.clip(sound * LOUD / np.sqrt(np.mean(sound**2)), -0.95, 0.95), np.float32)
