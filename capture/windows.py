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


_VOICE_EDGE = 0.05
"""Seconds that a word may reach past the voice detection's own edges, which come in steps of 0.032 s."""


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of speech in a block, in samples, ends exclusive."""

    start: int
    end: int
    """What is given to the model: the voice and some sound on each side."""
    voice_start: int
    voice_end: int
    """Where the voice itself begins and ends."""


@dataclass(frozen=True, slots=True)
class Window:
    """Stretches of speech heard together."""

    spans: tuple[Span, ...]

    def samples(self, block: Samples) -> Samples:
        """The sound of the stretches, one behind the other."""
        return np.concatenate([block[span.start : span.end] for span in self.spans])

    def place(self, start: float, end: float) -> tuple[float, float]:
        """Seconds in the window as seconds in the block, both in the stretch where the middle falls.

        Whisper stretches the first word of a window, and words beside a pause, into the silence; so the voice's own
        edges bound them.
        """
        middle = (start + end) / 2 * RATE
        before = 0
        for span in self.spans:
            length = span.end - span.start
            if middle < before + length or span is self.spans[-1]:
                shift = (span.start - before) / RATE
                low = max(span.voice_start / RATE - _VOICE_EDGE, span.start / RATE)
                high = min(span.voice_end / RATE + _VOICE_EDGE, span.end / RATE)
                return min(max(start + shift, low), high), min(max(end + shift, low), high)
            before += length
        return start, end


def find_speech(samples: Samples, options: HearingOptions) -> list[Span]:
    """Stretches of speech of 30 s at most, with sound on each side, by Silero's voice detection."""
    pad = round(options.voice_pad_ms * RATE / 1000)
    voices = find_voice(samples, options)
    spans: list[Span] = []
    for number, (start, end) in enumerate(voices):
        # Two stretches that are close share the silence between them.
        before = (start - voices[number - 1][1]) // 2 if number else start
        after = (voices[number + 1][0] - end) // 2 if number + 1 < len(voices) else len(samples) - end
        spans.append(Span(start - min(pad, before), end + min(pad, after), start, end))
    return spans


def find_voice(samples: Samples, options: HearingOptions) -> list[tuple[int, int]]:
    """Where somebody speaks, from sample to sample, each short enough for a window when padded."""
    from faster_whisper.vad import VadOptions, get_speech_timestamps

    if not len(samples):
        return []
    found = get_speech_timestamps(
        samples,
        VadOptions(
            threshold=options.voice_threshold,
            max_speech_duration_s=WINDOW / RATE - 2 * options.voice_pad_ms / 1000,
            min_silence_duration_ms=options.voice_gap_ms,
            speech_pad_ms=0,
        ),
    )
    return [(int(span["start"]), min(int(span["end"]), len(samples))) for span in found]


def pack(spans: Sequence[Span], longest: int = WINDOW) -> list[Window]:
    """Fill windows of at most `longest` samples with stretches, in order.

    A window that is full ends at the longest pause behind its first third, so that a breath inside a figure ("eleven
    ... sixty-fourths") doesn't part it.
    """
    windows: list[Window] = []
    held: list[Span] = []
    for span in spans:
        while held and _length(held) + span.end - span.start > longest:
            cut = _pause(held, span)
            windows.append(Window(tuple(held[:cut])))
            held = held[cut:]
        held.append(span)
    if held:
        windows.append(Window(tuple(held)))
    return windows


def _length(spans: Sequence[Span]) -> int:
    return sum(span.end - span.start for span in spans)


def _pause(held: Sequence[Span], following: Span) -> int:
    """How many of the stretches to take so that the window ends at the longest pause behind its first third."""
    third = _length(held) / 3
    behind = [*held[1:], following]
    late = [at + 1 for at in range(len(held)) if _length(held[: at + 1]) >= third]
    return max(late, key=lambda cut: behind[cut - 1].voice_start - held[cut - 1].voice_end)
