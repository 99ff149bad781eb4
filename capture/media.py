"""What kind of recording a file holds, and whether all of it is there.

Every way in which a file can fail to be a recording becomes one `RecordingError` with a remedy.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import av
from av.error import FFmpegError
from av.stream import Disposition

from capture.errors import RecordingError
from capture.timecode import clock

if TYPE_CHECKING:
    from av.audio.stream import AudioStream
    from av.container import InputContainer
    from av.stream import Stream

CUT_SHORT = 2.0
"""Seconds that may be missing at the end before a file counts as cut short: a camera's last packets differ by less."""

_MICROSECONDS = 1_000_000
"""FFmpeg counts a container's times in these (AV_TIME_BASE)."""

_OWN_ZERO = ("mov", "matroska", "webm", "ogg", "wav", "flac")
"""Containers whose times count from the player's zero. In the others (transport streams) a player's zero is the first
packet, whatever time it carries."""

_EXACT = ("mov", "matroska", "webm", "wav", "flac")
"""Containers that state their length; others' is worked out from size or last packet, and proves nothing."""


@dataclass(frozen=True, slots=True)
class Probe:
    """What a recording holds."""

    duration: float
    """Seconds from the player's zero to the end of the longest track."""
    has_sound: bool
    has_picture: bool
    """False where the only picture is a cover."""
    container: str
    """FFmpeg's name of the container: "mov", "matroska", "wav" ..."""


def probe(path: Path) -> Probe:
    """What `path` holds, from its headers. Raises `RecordingError` where it is no recording."""
    with open_recording(path) as container:
        pictures = [s for s in container.streams.video if Disposition.attached_pic not in s.disposition]
        return Probe(
            duration=declared_end(container),
            has_sound=bool(container.streams.audio),
            has_picture=bool(pictures),
            container=container.format.name.split(",")[0],
        )


@contextmanager
def open_recording(path: Path) -> Iterator[InputContainer]:
    """Open a film or sound file. Raises `RecordingError`, also for what FFmpeg meets while the file is read."""
    _check_file(path)
    try:
        container = av.open(str(path), metadata_errors="ignore")
    except (FFmpegError, OSError, ValueError) as error:
        raise _unreadable(path) from error
    with container:
        if not container.streams.audio and not container.streams.video and not container.streams.subtitles:
            raise RecordingError(path, "holds neither sound nor picture", "give a film or sound file")
        yield container


def sound_stream(path: Path, container: InputContainer) -> AudioStream:
    """The sound track that a player would play. Raises `RecordingError` where there is none."""
    best = container.streams.best("audio")
    stream = next((stream for stream in container.streams.audio if stream == best), None)
    if stream is None:
        raise RecordingError(
            path, "the film has no sound", "put its captions beside it as a .vtt or .srt file of the same name"
        )
    return stream


def zero_of(container: InputContainer) -> float:
    """The time stamp, in seconds, that the film's player shows as zero."""
    if container.start_time is None or container.format.name.startswith(_OWN_ZERO):
        return 0.0
    return container.start_time / _MICROSECONDS


def declared_end(container: InputContainer) -> float:
    """Where the file says it ends, in seconds from its zero; read to its last packet where it says nothing."""
    if container.duration is not None:
        start = max(container.start_time or 0, 0) / _MICROSECONDS
        return max(start - zero_of(container) + container.duration / _MICROSECONDS, 0.0)
    ends = [last_packet_end(container, stream) for stream in (*container.streams.audio, *container.streams.video)]
    return max((end for end in ends if end is not None), default=0.0)


def check_whole(path: Path) -> None:
    """Raise `RecordingError` where the sound breaks off far before the end that the file declares.

    Looks only at the end of the file, so that hours of hearing aren't spent on half a film. Sound that ends earlier
    than the picture, in a file that is whole, passes.
    """
    with open_recording(path) as container:
        stream = sound_stream(path, container)
        if not container.format.name.startswith(_EXACT):
            return
        declared = _stream_end(stream, zero_of(container))
        tracks: list[Stream] = [stream]
        if declared is None:
            declared = declared_end(container)
            tracks.extend(container.streams.video)
        ends = [last_packet_end(container, track) or 0.0 for track in tracks]
        if max(ends) < declared - CUT_SHORT:
            raise cut_short(path, ends[0], declared)


def cut_short(path: Path, end: float, declared: float) -> RecordingError:
    """The error for a file whose sound breaks off."""
    return RecordingError(
        path,
        f"the file is cut short: its sound breaks off at {clock(end)} of {clock(declared)}",
        "copy it from the camera again, or export the part that is there as a new file",
    )


def last_packet_end(container: InputContainer, stream: Stream) -> float | None:
    """Where the last packet of a track ends, in seconds from zero; null where the track has none."""
    base = float(stream.time_base or 0)
    if container.duration is not None and base:
        near_end = (container.start_time or 0) + container.duration - 30 * _MICROSECONDS
        found = _read_to_end(container, stream, max(near_end, 0))
        if found is not None:
            return found * base - zero_of(container)
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


def _stream_end(stream: Stream, zero: float) -> float | None:
    if stream.duration is None or stream.time_base is None:
        return None
    return float((max(stream.start_time or 0, 0) + stream.duration) * stream.time_base) - zero


def _check_file(path: Path) -> None:
    try:
        if path.is_dir():
            raise RecordingError(path, "is a folder, not a recording", "name a film or sound file in it")
        if path.stat().st_size == 0:
            raise RecordingError(path, "the file is empty", "copy it from the camera again")
        with path.open("rb"):
            pass
    except FileNotFoundError as error:
        raise RecordingError(path, "there is no such file", "check the name and the folder") from error
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise RecordingError(path, f"the file can't be opened ({reason})", "check who may read it") from error


def _unreadable(path: Path) -> RecordingError:
    atoms = _top_atoms(path)
    if "ftyp" in atoms and "moov" not in atoms:
        return RecordingError(
            path,
            "the film has no index (moov atom), so the camera never finished writing it",
            "copy it from the camera again, or mend it with the camera maker's own program",
        )
    return RecordingError(path, "holds no sound or film that can be read", "give a film or sound file")


def _top_atoms(path: Path) -> list[str]:
    """Kinds of the top boxes of an ISO media file (ISO/IEC 14496-12, 4.2), in order; nonsense for other files."""
    kinds: list[str] = []
    size_of_file = path.stat().st_size
    with path.open("rb") as file:
        at = 0
        while at + 8 <= size_of_file and len(kinds) < 1000:
            file.seek(at)
            head = file.read(16)
            size, kind = int.from_bytes(head[:4], "big"), head[4:8].decode("latin-1")
            if size == 1 and len(head) == 16:
                size = int.from_bytes(head[8:], "big")
            kinds.append(kind)
            if size < 8:
                break
            at += size
    return kinds
