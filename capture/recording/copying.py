"""A copy of a recording with length and index, each of its packets compared with the original."""

from __future__ import annotations

import hashlib
from array import array
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

import av
from av.error import FFmpegError

from capture.errors import RecordingError
from capture.media import open_recording

if TYPE_CHECKING:
    from av.container import InputContainer
    from av.packet import Packet
    from av.stream import Stream

    AnyPacket = Packet[Stream]

_CLOSE = 0.0021
"""Seconds that a packet's time may differ: WebM counts in milliseconds, and a copy may round each time once more."""

_REMEDY = "it stays as it came"


@dataclass(slots=True)
class _Track:
    """What came by of one track."""

    sum: hashlib._Hash = field(default_factory=hashlib.sha256)
    times: array[float] = field(default_factory=lambda: array("d"))

    def add(self, packet: AnyPacket) -> None:
        self.sum.update(len(packet_bytes := bytes(packet)).to_bytes(4, "big") + packet_bytes)
        self.times.append(_time(packet))


def copy_whole(source: Path, target: Path, container: str) -> float:
    """Copy `source` to `target` with length and index; gives the length in seconds.

    `container` is FFmpeg's name for the form. A last packet that the plug was pulled on is left out. Raises
    `RecordingError` where the copy does not hold every packet of the source at its time, or can't be made.
    """
    before = _copied(source, target, container)
    with open_recording(target) as copy:
        after = _tracks(copy)
        for packet in _whole_packets(copy):
            after[packet.stream_index].add(packet)
        length = copy.duration
    if not _same(before, after):
        raise RecordingError(source, "its copy with an index differs from it", _REMEDY)
    if length is None:
        raise RecordingError(source, "its copy still lacks a length", _REMEDY)
    return length / 1_000_000


def _copied(source: Path, target: Path, container: str) -> list[_Track]:
    with open_recording(source) as recorded, av.open(str(target), "w", format=container) as copy:
        tracks = _tracks(recorded)
        streams = [copy.add_stream_from_template(stream) for stream in recorded.streams]
        for packet in _whole_packets(recorded):
            tracks[packet.stream_index].add(packet)
            packet.stream = streams[packet.stream_index]
            copy.mux(packet)
    return tracks


def _tracks(container: InputContainer) -> list[_Track]:
    return [_Track() for _ in container.streams]


def _whole_packets(container: InputContainer) -> Iterator[AnyPacket]:
    """The packets up to where the file breaks off."""
    try:
        for packet in container.demux():
            if packet.size and packet.pts is not None and not packet.is_corrupt:
                yield packet
    except FFmpegError:
        return


def _time(packet: AnyPacket) -> float:
    return float((packet.pts or 0) * packet.time_base)


def _same(before: list[_Track], after: list[_Track]) -> bool:
    if len(before) != len(after) or not any(track.times for track in before):
        return False
    return all(
        one.sum.digest() == other.sum.digest()
        and len(one.times) == len(other.times)
        and all(abs(here - there) <= _CLOSE for here, there in zip(one.times, other.times, strict=True))
        for one, other in zip(before, after, strict=True)
    )
