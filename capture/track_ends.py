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


def end_of(container: InputContainer) -> float:
    """Where the recording ends, in seconds from its zero: where the file says so, else where its last packet ends."""
    declared = declared_end(container)
    return _read_to_end(container, 0) - zero_of(container) if declared is None else declared


def declared_end(container: InputContainer) -> float | None:
    """Where the file says it ends, in seconds from its zero; null for one whose writer was stopped or never knew."""
    if container.duration is None:
        return None
    start = max(container.start_time or 0, 0) / MICROSECONDS
    return max(start - zero_of(container) + container.duration / MICROSECONDS, 0.0)


def declared_track_end(container: InputContainer, stream: Stream) -> float | None:
    """Where the file says one of its tracks ends, in seconds from its zero; null where it doesn't."""
    if stream.duration is None or stream.time_base is None:
        return None
    end = float((max(stream.start_time or 0, 0) + stream.duration) * stream.time_base)
    return end - zero_of(container)


def last_packet_end(container: InputContainer, stream: Stream) -> float:
    """Where the last packet of a track ends, in seconds from zero; 0 where the track has none.

    Reads the last half minute, or the whole file where the track has ended before that. Moves the reading position.
    """
    found = 0.0
    if container.duration is not None:
        near_end = (container.start_time or 0) + container.duration - _TAIL
        found = _read_to_end(container, max(near_end, 0), stream)
    found = found or _read_to_end(container, 0, stream)
    return max(found - zero_of(container), 0.0)


def _read_to_end(container: InputContainer, start: int, *streams: Stream) -> float:
    """The time stamp, in seconds, at which the last packet ends of some tracks, or of all."""
    last = 0.0
    try:
        container.seek(start)
        for packet in container.demux(*streams):
            if packet.pts is not None and packet.time_base is not None and packet.size:
                last = max(last, float((packet.pts + (packet.duration or 0)) * packet.time_base))
    except FFmpegError:
        # What can't be read is what this looks for: the last good packet is the answer.
        return last
    return last
