"""Several channels into one, so that whatever was recorded is heard.

The plain mean halves a voice that is on one channel only, and cancels one that is on both in opposite phase (a lead
wired the wrong way round). So each second takes the plain mean, unless the mean is much weaker than the loudest channel
alone: then it takes that channel. Two microphones that hear different voices stay both heard, because the mean of two
equal unlike signals is weaker than either by the square root of two only, and the bar lies between that and a half.
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

Samples = npt.NDArray[np.float32]

_BAR = 0.6
"""The mean counts as weak below this share of the loudest channel: half is what one live channel of two leaves, 0.71
what two equal unlike ones do."""

_RAMP = 320
"""Samples over which one second's mix passes into the next one's, so that a change makes no click."""


class Mixer:
    """Mixes one run of sound; keeps the last weights to pass over softly."""

    def __init__(self) -> None:
        self._weights: Samples | None = None

    def mix(self, second: Samples) -> Samples:
        """One stretch of sound, shape (channels, samples), as shape (samples,)."""
        channels, length = second.shape
        if channels == 1 or length == 0:
            only: Samples = second[0]
            return only
        weights = _weights(second)
        before = weights if self._weights is None else self._weights
        self._weights = weights
        mixed: Samples = weights @ second
        if not np.array_equal(before, weights):
            ramp = np.linspace(0, 1, min(_RAMP, length), dtype=np.float32)
            mixed[: len(ramp)] = (1 - ramp) * (before @ second[:, : len(ramp)]) + ramp * mixed[: len(ramp)]
        return mixed


def _weights(second: Samples) -> Samples:
    channels = len(second)
    mean = np.full(channels, 1 / channels, dtype=np.float32)
    levels = np.sqrt((second.astype(np.float64) ** 2).mean(axis=1))
    loudest = int(levels.argmax())
    level_of_mean = np.sqrt((second.mean(axis=0, dtype=np.float64) ** 2).mean())
    if level_of_mean >= levels[loudest] * _BAR:
        return mean
    alone = np.zeros(channels, dtype=np.float32)
    alone[loudest] = 1
    return alone
