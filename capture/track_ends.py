"""Where a recording begins and ends, and where each of its tracks does."""

from __future__ import annotations

from typing import TYPE_CHECKING

from av.error import FFmpegError

if TYPE_CHECKING:
    from av.container import InputContainer
    from av.stream import Stream

MICROSECONDS = 1_000_000
"""FFmpeg counts a container's times in these (AV_TIME_BASE)."""

_OWN_ZERO = ("mov", "matroska", "webm", "ogg", "wav", "flac")
"""Containers whose times count from the player's zero. In the others (transport streams) a player's zero is the first
packet, whatever time it carries."""

_TAIL = 30 * MICROSECONDS


def zero_of(container: InputContainer) -> float:
    """The time stamp, in seconds, that the film's player shows as zero."""
    if container.start_time is None or container.format.name.startswith(_OWN_ZERO):
        return 0.0
    return container.start_time / MICROSECONDS


def declared_end(container: InputContainer) -> float:
    """Where the file says it ends, in seconds from its zero; read to its last packet where it says nothing."""
    if container.duration is not None:
        start = max(container.start_time or 0, 0) / MICROSECONDS
        return max(start - zero_of(container) + container.duration / MICROSECONDS, 0.0)
    ends = [last_packet_end(container, stream) for stream in (*container.streams.audio, *container.streams.video)]
    container.seek(0)
    return max((end for end in ends if end is not None), default=0.0)


def declared_track_end(container: InputContainer, stream: Stream) -> float | None:
    """Where the file says one of its tracks ends, in seconds from its zero; null where it doesn't."""
    if stream.duration is None or stream.time_base is None:
        return None
    end = float((max(stream.start_time or 0, 0) + stream.duration) * stream.time_base)
    return end - zero_of(container)


def last_packet_end(container: InputContainer, stream: Stream) -> float | None:
    """Where the last packet of a track ends, in seconds from zero; null where the track has none.

    Reads the last half minute, or the whole file where the track has ended before that. Moves the reading position.
    """
    base = float(stream.time_base or 0)
    found: int | None = None
    if container.duration is not None:
        near_end = (container.start_time or 0) + container.duration - _TAIL
        found = _read_to_end(container, stream, max(near_end, 0))
    if found is None:
        found = _read_to_end(container, stream, 0)
    return None if found is None else found * base - zero_of(container)


def _read_to_end(container: InputContainer, stream: Stream, start: int) -> int | None:
    last: int | None = None
    try:
        container.seek(start)
        for packet in container.demux(stream):
            if packet.pts is not None and packet.size:
                last = max(last or 0, packet.pts + (packet.duration or 0))
    except FFmpegError:
        # What can't be read is what this looks for: the last good packet is the answer.
        return last
    return last
