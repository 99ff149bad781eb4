"""Decoded frames laid on the film's own time, as 16 kHz mono."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from av.audio.frame import AudioFrame
from av.audio.resampler import AudioResampler

from capture.mixing import Mixer, Samples
from capture.timecode import clock

RATE = 16_000
"""Samples a second that the speech model takes."""

_TOLERANCE = 0.05
"""Seconds by which a frame may miss its place before the time is put right: containers round to milliseconds."""

_BROKEN_CLOCK = 5.0
"""A step back of more seconds than this, or one as far past the end, is a broken clock: nothing is lost for it."""


_LONGEST_HOLE = 3600.0
"""Seconds that a hole may have in a recording that doesn't say where it ends."""

_MOST_WARNINGS = 20


class Timeline:
    """Lays frames on the film's time."""

    def __init__(self, zero: float, end: float | None, warnings: list[str]) -> None:
        self._zero = zero
        self._end = end
        self._warnings = warnings
        self._run: _Run | None = None
        self._written = 0
        self._damaged = False

    def add(self, frame: AudioFrame) -> Iterator[Samples]:
        """The samples that are certain once this frame is known."""
        run = self._run
        due = self.place
        at = due if frame.pts is None or frame.time_base is None else float(frame.pts * frame.time_base) - self._zero
        step = at - due
        furthest = due + _LONGEST_HOLE if self._end is None else max(self._end, due)
        if step < -_BROKEN_CLOCK or at > furthest + _BROKEN_CLOCK:
            self._warn_once(f"the recording's clock jumps near {clock(due)}: times after it may be off")
            step = 0.0
        skip = 0
        if abs(step) > _TOLERANCE or (run is None and step > 0):
            yield from self.finish()
            run = None
            if step > 0:
                yield from self._silence(round(at * RATE) - self._written)
            else:
                skip = round(-step * frame.sample_rate)
        if run is not None and not run.fits(frame):
            yield from self.finish()
            run = None
        self._damaged = False
        if skip >= frame.samples:
            return
        if run is None:
            run = self._run = _Run(frame, max(at, due) if step else due)
        yield from self._count(run.add(frame, skip))

    def finish(self) -> Iterator[Samples]:
        """What the resampler still holds."""
        if self._run is not None:
            run, self._run = self._run, None
            yield from self._count(run.finish())

    def damage(self) -> None:
        """Remember that a packet here can't be read; packets in a row are one warning."""
        if not self._damaged:
            self._warn_once(f"the sound is damaged at {clock(self.place)}: that moment is left out")
        self._damaged = True

    @property
    def place(self) -> float:
        """Seconds from the film's zero up to which sound was laid."""
        return self._run.due if self._run else self._written / RATE

    def _warn_once(self, text: str) -> None:
        if text in self._warnings:
            return
        if len(self._warnings) < _MOST_WARNINGS:
            self._warnings.append(text)
        else:
            self._warnings[-1] = f"{text}, and so are other moments before it"

    def _silence(self, samples: int) -> Iterator[Samples]:
        while samples > 0:
            piece = np.zeros(min(samples, RATE), dtype=np.float32)
            samples -= len(piece)
            self._written += len(piece)
            yield piece

    def _count(self, pieces: Iterator[Samples]) -> Iterator[Samples]:
        for piece in pieces:
            self._written += len(piece)
            yield piece


class _Run:
    """Frames that follow on one another in one format: one resampler, one mixer."""

    def __init__(self, frame: AudioFrame, start: float) -> None:
        self._format = (frame.sample_rate, frame.layout.name, frame.format.name)
        self._resampler = AudioResampler(format="fltp", layout=frame.layout, rate=RATE)
        self._mixer = Mixer()
        self._held: list[Samples] = []
        self._held_length = 0
        self._start = start
        self._taken = 0

    @property
    def due(self) -> float:
        """Seconds at which the next frame should begin."""
        return self._start + self._taken / self._format[0]

    def fits(self, frame: AudioFrame) -> bool:
        return self._format == (frame.sample_rate, frame.layout.name, frame.format.name)

    def add(self, frame: AudioFrame, skip: int) -> Iterator[Samples]:
        self._taken += frame.samples - skip
        # The place is settled already; the resampler must not judge it again.
        frame.pts = None
        drop = skip * RATE // frame.sample_rate
        for resampled in self._resampler.resample(frame):
            samples = _planes(resampled)[:, drop:]
            drop = max(drop - resampled.samples, 0)
            self._held.append(samples)
            self._held_length += samples.shape[1]
        if self._held_length >= RATE:
            yield from self._mix(self._held_length // RATE * RATE)

    def finish(self) -> Iterator[Samples]:
        for resampled in self._resampler.resample(None):
            samples = _planes(resampled)
            self._held.append(samples)
            self._held_length += samples.shape[1]
        yield from self._mix(self._held_length)

    def _mix(self, length: int) -> Iterator[Samples]:
        if not self._held:
            return
        held = np.concatenate(self._held, axis=1)
        for start in range(0, length, RATE):
            yield self._mixer.mix(held[:, start : min(start + RATE, length)])
        self._held = [held[:, length:]]
        self._held_length = held.shape[1] - length


def _planes(frame: AudioFrame) -> Samples:
    """The samples of a float frame, shape (channels, samples)."""
    return np.asarray(frame.to_ndarray(), dtype=np.float32)
