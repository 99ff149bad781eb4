"""Stretches of speech in a block, packed into the windows of up to 30 s that the model hears at once.

Whisper always hears 30 s. Where speech is sparse, as it is while hands are working, several stretches share one window,
one behind the other, and each word's time is then led back to the stretch it fell in.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from capture.mixing import Samples
from capture.options import HearingOptions
from capture.sound import RATE

WINDOW = 30 * RATE
"""Samples that Whisper hears at once."""


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of speech in a block, in samples, `end` exclusive."""

    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Window:
    """Stretches of speech heard together."""

    spans: tuple[Span, ...]

    def samples(self, block: Samples) -> Samples:
        """The sound of the stretches, one behind the other."""
        return np.concatenate([block[span.start : span.end] for span in self.spans])

    def place(self, start: float, end: float) -> tuple[float, float]:
        """Seconds in the window as seconds in the block; both ends in the stretch where the middle falls."""
        middle = (start + end) / 2 * RATE
        before = 0
        for span in self.spans:
            length = span.end - span.start
            if middle < before + length or span is self.spans[-1]:
                shift, low, high = (span.start - before) / RATE, span.start / RATE, span.end / RATE
                return min(max(start + shift, low), high), min(max(end + shift, low), high)
            before += length
        return start, end


def find_speech(samples: Samples, options: HearingOptions, *, pad_ms: int | None = None) -> list[Span]:
    """Stretches of speech, by Silero's voice detection, each of 30 s at most."""
    from faster_whisper.vad import VadOptions, get_speech_timestamps

    if not len(samples):
        return []
    found = get_speech_timestamps(
        samples,
        VadOptions(
            threshold=options.voice_threshold,
            max_speech_duration_s=WINDOW / RATE,
            min_silence_duration_ms=options.voice_gap_ms,
            speech_pad_ms=options.voice_pad_ms if pad_ms is None else pad_ms,
        ),
    )
    return [Span(int(span["start"]), min(int(span["end"]), len(samples))) for span in found]


def pack(spans: Sequence[Span]) -> list[Window]:
    """Fill windows with stretches, in order."""
    windows: list[Window] = []
    held: list[Span] = []
    length = 0
    for span in spans:
        if held and length + span.end - span.start > WINDOW:
            windows.append(Window(tuple(held)))
            held, length = [], 0
        held.append(span)
        length += span.end - span.start
    if held:
        windows.append(Window(tuple(held)))
    return windows
