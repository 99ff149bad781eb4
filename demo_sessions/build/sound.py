"""Puts the lines of a script together into one recording: speech, the work between, and the tone of the room."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from av import AudioFrame
from av.audio.resampler import AudioResampler

from demo_sessions.build.noises import room_tone, work_noise
from demo_sessions.build.script import Script
from demo_sessions.build.voices import Samples, Spoken, Voice

RATE = 24000
"""Samples a second of a finished recording."""
LEAD_IN = 1.2
"""Seconds before the first word."""
SPEECH_LEVEL = 0.09
"""Root mean square of speech, about -21 dB below full scale."""
PEAK = 0.89


@dataclass(frozen=True, slots=True)
class Placed:
    """Where a line lies in the recording."""

    start: float
    end: float
    until: float
    """When the next line starts: the work after this one is done."""
    word_starts: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Recording:
    """A finished sound at `RATE`, and where each line of the script lies in it."""

    samples: Samples
    lines: tuple[Placed, ...]

    @property
    def duration(self) -> float:
        """Seconds."""
        return len(self.samples) / RATE


def record(script: Script, voice: Voice) -> Recording:
    """Read a whole script aloud."""
    pieces: list[Samples] = [np.zeros(round(LEAD_IN * RATE), np.float32)]
    lines: list[Placed] = []
    at = len(pieces[0])
    for number, line in enumerate(script.line):
        spoken = voice.read(line.say, script.pace)
        speech = _level(_resampled(spoken))
        pause = script.gap if line.pause is None else line.pause
        work = work_noise(line.work, round(pause * RATE), RATE, seed=number)
        start, end = at / RATE, (at + len(speech)) / RATE
        until = (at + len(speech) + len(work)) / RATE
        lines.append(Placed(start, end, until, tuple(start + second for second in spoken.word_starts)))
        pieces += [speech, work]
        at += len(speech) + len(work)
    mixed = np.concatenate(pieces)
    mixed = mixed + room_tone(len(mixed), RATE, seed=len(lines))
    return Recording(np.clip(mixed, -PEAK, PEAK).astype(np.float32), tuple(lines))


def _resampled(spoken: Spoken) -> Samples:
    frame = AudioFrame.from_ndarray(spoken.samples[np.newaxis, :], format="fltp", layout="mono")
    frame.sample_rate = spoken.rate
    resampler = AudioResampler(format="fltp", layout="mono", rate=RATE)
    parts = [part.to_ndarray()[0] for given in (frame, None) for part in resampler.resample(given)]
    return np.concatenate(parts).astype(np.float32)


def _level(speech: Samples) -> Samples:
    loud = speech[np.abs(speech) > 0.01]
    gain = SPEECH_LEVEL / float(np.sqrt(np.mean(loud**2)))
    return np.asarray(speech * gain, np.float32)
