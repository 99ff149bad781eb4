"""Writes sound and film files with PyAV: AAC sound, H.264 pictures, nothing in them that differs between two builds."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from pathlib import Path

import av
import numpy as np
from av.audio.stream import AudioStream
from av.container import OutputContainer
from PIL.Image import Image

from demo_sessions.build.sound import RATE
from demo_sessions.build.voices import Samples

SOUND_BITS = 32_000
"""Bits a second of sound: plenty for one voice, small enough to keep in a repository."""
PICTURES = {"crf": "28", "preset": "slow", "tune": "animation", "x264-params": "asm=AVX2"}
"""How pictures are encoded. With AVX-512 this encoder gives other bits each time; up to AVX2 it gives the same."""
STEADY = {"fflags": "+bitexact", "movflags": "+faststart"}
AAC_BLOCK = 1024


def write_sound(path: Path, samples: Samples) -> None:
    """Mono sound as an .m4a file."""
    with av.open(str(path), "w", format="ipod", options=STEADY) as file:
        stream = _sound_stream(file)
        _mux_sound(file, stream, samples)


def write_film(path: Path, frames: Iterable[Image], fps: int, samples: Samples) -> None:
    """A film as an .mp4 file; all frames have the same even width and height."""
    with av.open(str(path), "w", format="mp4", options=STEADY) as file:
        pictures = file.add_stream("libx264", rate=fps)
        pictures.pix_fmt = "yuv420p"
        pictures.codec_context.thread_count = 1
        pictures.options = {**PICTURES, "g": str(fps * 10)}
        sound = _sound_stream(file)
        for number, image in enumerate(frames):
            if number == 0:
                pictures.width, pictures.height = image.size
            frame = av.VideoFrame.from_ndarray(np.asarray(image), format="rgb24")
            frame.pts, frame.time_base = number, Fraction(1, fps)
            file.mux(pictures.encode(frame))
        file.mux(pictures.encode(None))
        _mux_sound(file, sound, samples)


def _sound_stream(file: OutputContainer) -> AudioStream:
    stream = file.add_stream("aac", rate=RATE)
    stream.layout = "mono"
    stream.bit_rate = SOUND_BITS
    stream.codec_context.options = {"flags": "+bitexact"}
    return stream


def _mux_sound(file: OutputContainer, stream: AudioStream, samples: Samples) -> None:
    for start in range(0, len(samples), AAC_BLOCK):
        block = np.ascontiguousarray(samples[np.newaxis, start : start + AAC_BLOCK])
        frame = av.AudioFrame.from_ndarray(block, format="fltp", layout="mono")
        frame.sample_rate = RATE
        frame.pts, frame.time_base = start, Fraction(1, RATE)
        file.mux(stream.encode(frame))
    file.mux(stream.encode(None))
