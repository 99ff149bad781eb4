"""The sound of a recording as 16 kHz mono, laid on the film's own time.

Sample n of what comes out was heard n/16000 s after the film's zero: sound that starts late, and gaps in it, come out
as silence. Only a few seconds are held at a time, however long the film.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from av.error import EOFError as EndOfFile
from av.error import FFmpegError

from capture.errors import RecordingError
from capture.media import open_recording, sound_stream
from capture.mixing import Samples
from capture.timecode import clock
from capture.timeline import RATE, Timeline
from capture.track_ends import declared_end, zero_of

__all__ = ["RATE", "Sound"]

if TYPE_CHECKING:
    from av.audio.frame import AudioFrame
    from av.audio.stream import AudioStream
    from av.container import InputContainer
    from av.packet import Packet

_MOSTLY_DAMAGED = 0.5
"""Share of packets that can't be read from which a recording is of no use."""

_STUCK = 100
"""Times in a row that FFmpeg may fail to find the next packet."""


class Sound:
    """The sound track of a recording. `warnings` fills while `pieces` is read."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.warnings: list[str] = []

    def pieces(self) -> Iterator[Samples]:
        """Stretches of samples, in order, of a second or less each.

        Raises `RecordingError` where the file can't be opened, has no sound, can't be read on, or most of its sound is
        damaged. Damaged moments come out as silence, each with a warning.
        """
        self.warnings.clear()
        with open_recording(self.path) as container:
            stream = sound_stream(self.path, container)
            line = Timeline(zero_of(container), declared_end(container), self.warnings)
            good = bad = 0
            try:
                for frames in _decode(container, stream):
                    if frames is None:
                        bad += 1
                        line.damage()
                        continue
                    good += bool(frames)
                    for frame in frames:
                        yield from line.add(frame)
            except FFmpegError as error:
                raise self._damaged(f"its sound can't be read past {clock(line.place)}") from error
            yield from line.finish()
            if bad > (good + bad) * _MOSTLY_DAMAGED:
                raise self._damaged("most of its sound is damaged and can't be read")

    def _damaged(self, problem: str) -> RecordingError:
        return RecordingError(self.path, problem, "copy it from the camera again")


def _decode(container: InputContainer, stream: AudioStream) -> Iterator[list[AudioFrame] | None]:
    """Frames packet by packet; null for a packet that can't be read. Raises `FFmpegError` where FFmpeg is stuck."""
    failures = 0
    while True:
        try:
            for packet in container.demux(stream):
                failures = 0
                yield _frames(packet)
            return
        except EndOfFile:
            return
        except FFmpegError:
            # FFmpeg goes on behind a damaged stretch when it is asked again, but not always.
            failures += 1
            if failures > _STUCK:
                raise
            yield None


def _frames(packet: Packet[AudioStream]) -> list[AudioFrame] | None:
    try:
        return packet.decode()
    except EndOfFile:
        return []
    except FFmpegError:
        return None
