"""Stand-ins made on the spot: a short film with sound, and a picture."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import av
import numpy as np
from PIL import Image

_RATE = 48_000
_FRAMES_A_SECOND = 5
_BLOCK = 960
"""Samples that Opus takes at once: 20 ms."""


def short_film(path: Path, seconds: int) -> Path:
    """A VP8 film with a slow grey ramp and a tone in Opus, playable by any browser."""
    with av.open(str(path), "w") as container:
        film = container.add_stream("libvpx", rate=_FRAMES_A_SECOND, options={"g": str(_FRAMES_A_SECOND)})
        film.width, film.height, film.pix_fmt = 160, 90, "yuv420p"
        sound = container.add_stream("libopus", rate=_RATE, layout="mono")
        tone = (0.1 * np.sin(2 * np.pi * 300 * np.arange(seconds * _RATE) / _RATE)).astype(np.float32)
        for number in range(seconds * _FRAMES_A_SECOND):
            shade = np.full((90, 160, 3), 40 + number % 160, dtype=np.uint8)
            container.mux(film.encode(av.VideoFrame.from_ndarray(shade, format="rgb24")))
            for start in range(number * _RATE // _FRAMES_A_SECOND, (number + 1) * _RATE // _FRAMES_A_SECOND, _BLOCK):
                block = av.AudioFrame.from_ndarray(tone[None, start : start + _BLOCK], format="flt", layout="mono")
                block.sample_rate, block.pts, block.time_base = _RATE, start, Fraction(1, _RATE)
                container.mux(sound.encode(block))
        container.mux(film.encode(None))
        container.mux(sound.encode(None))
    return path


def picture(path: Path) -> Path:
    """A small picture file."""
    path.parent.mkdir(parents=True, exist_ok=True)
    Image.new("RGB", (24, 16), (120, 90, 40)).save(path)
    return path
