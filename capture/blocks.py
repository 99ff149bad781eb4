"""The sound cut into blocks at pauses, so that hearing can stop and go on between them.

Where a block ends depends on its samples alone, so that a run that goes on later cuts at the same places.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np

from capture.mixing import Samples
from capture.options import HearingOptions
from capture.sound import RATE
from capture.windows import find_voice

_SHORTEST_PAUSE = RATE // 10
_FRAME = RATE // 50


@dataclass(frozen=True, slots=True)
class Block:
    """A stretch of the recording."""

    start: int
    """Its first sample, counted from the recording's zero."""
    samples: Samples

    @property
    def end(self) -> int:
        """One past its last sample."""
        return self.start + len(self.samples)


def cut(pieces: Iterable[Samples], options: HearingOptions, *, skip: int = 0) -> Iterator[Block]:
    """Blocks of about `options.block_seconds`, from sample `skip` on, which must be the end of an earlier block."""
    earliest = round((options.block_seconds - options.block_slack) * RATE)
    latest = round((options.block_seconds + options.block_slack) * RATE)
    held: list[Samples] = []
    length = 0
    start = skip
    to_skip = skip
    for piece in pieces:
        dropped = min(to_skip, len(piece))
        to_skip -= dropped
        if dropped == len(piece):
            continue
        held.append(piece[dropped:])
        length += len(piece) - dropped
        while length >= latest:
            samples = np.concatenate(held)
            at = earliest + find_pause(samples[earliest:latest], options)
            yield Block(start, samples[:at])
            start += at
            held, length = [samples[at:]], length - at
    if length:
        yield Block(start, np.concatenate(held))


def find_pause(samples: Samples, options: HearingOptions) -> int:
    """The best sample to cut at: the middle of the longest pause, or the quietest moment where nobody pauses."""
    ends = [0]
    for voice in find_voice(samples, options):
        ends.extend(voice)
    ends.append(len(samples))
    pauses = [(begin, end) for begin, end in zip(ends[::2], ends[1::2], strict=True)]
    begin, end = max(pauses, key=lambda pause: pause[1] - pause[0])
    if end - begin >= _SHORTEST_PAUSE:
        return (begin + end) // 2
    return _quietest(samples)


def _quietest(samples: Samples) -> int:
    frames = len(samples) // _FRAME
    if frames < 1:
        return len(samples) // 2
    energy = (samples[: frames * _FRAME].reshape(frames, _FRAME).astype(np.float64) ** 2).sum(axis=1)
    smooth = np.convolve(energy, np.ones(5), mode="same")
    return int(smooth.argmin()) * _FRAME + _FRAME // 2
