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
from capture.headers import mp3_counts_its_frames, ogg_has_an_end, top_boxes, wav_seconds
from capture.timecode import clock
from capture.track_ends import declared_end, declared_track_end, end_of, last_packet_end

if TYPE_CHECKING:
    from av.audio.codeccontext import AudioCodecContext
    from av.audio.stream import AudioStream
    from av.container import InputContainer

CUT_SHORT = 2.0
"""Seconds that may be missing at the end before a file counts as cut short: a camera's last packets differ by less."""

QUIET_END = 10.0
"""Seconds of picture without sound at the end that are worth a warning."""

_EXACT = ("mov", "matroska", "webm", "flac")
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
            duration=end_of(container),
            has_sound=bool(container.streams.audio),
            has_picture=bool(pictures),
            container=container.format.name.split(",")[0],
        )


@contextmanager
def open_recording(path: Path) -> Iterator[InputContainer]:
    """Open a film or sound file. Raises `RecordingError`, also for what FFmpeg meets while the file is read."""
    _check_file(path)
    try:
        with av.open(str(path), metadata_errors="ignore") as container:
            if not container.streams.audio and not container.streams.video and not container.streams.subtitles:
                raise RecordingError(path, "holds neither sound nor picture", "give a film or sound file")
            yield container
    except FFmpegError as error:
        raise _unreadable(path) from error


def sound_stream(path: Path, container: InputContainer) -> AudioStream:
    """The sound track that a player would play. Raises `RecordingError` where there is none."""
    tracks = container.streams.audio
    if not tracks:
        raise RecordingError(
            path, "the film has no sound", "put its captions beside it as a .vtt or .srt file of the same name"
        )
    # Phones write a second track in a form of their own beside the common one.
    readable = [track for track in tracks if _has_decoder(track)]
    if not readable:
        raise RecordingError(path, "its sound is in a form that can't be read", "export the film with AAC or PCM sound")
    best = container.streams.best("audio")
    return next((track for track in readable if track == best), readable[0])


def _has_decoder(track: AudioStream) -> bool:
    context: AudioCodecContext | None = track.codec_context
    return context is not None


def check_whole(path: Path) -> tuple[str, ...]:
    """Raise `RecordingError` where the sound breaks off far before the end that the file declares.

    Looks only at the end of the file, so that hours of hearing aren't spent on half a film. Gives warnings for what may
    be meant so: sound that stops before the picture, a file without a proper end.
    """
    with open_recording(path) as container:
        stream = sound_stream(path, container)
        whole = declared_end(container)
        if whole is None or not _states_length(path, container):
            return _unended(path, container)
        said = wav_seconds(path) or declared_track_end(container, stream)
        end = last_packet_end(container, stream)
        if said is not None:
            reached, declared = end, said
        else:
            others = [last_packet_end(container, picture) for picture in container.streams.video]
            reached, declared = max([end, *others]), whole
        if reached < declared - CUT_SHORT:
            raise RecordingError(
                path,
                f"the file is cut short: its sound breaks off at {clock(end)} of {clock(declared)}",
                "copy it from the camera again, or export the part that is there as a new file",
            )
        if end < whole - QUIET_END:
            return (f"the sound stops at {clock(end)}, the picture goes on to {clock(whole)}",)
        return ()


def _states_length(path: Path, container: InputContainer) -> bool:
    name = container.format.name
    if name == "mp3":
        return mp3_counts_its_frames(path)
    if name == "wav":
        return wav_seconds(path) is not None
    return name.startswith(_EXACT)


def _unended(path: Path, container: InputContainer) -> tuple[str, ...]:
    if container.format.name == "ogg" and not ogg_has_an_end(path):
        return (f"the file has no proper end: it may have been cut short at {clock(end_of(container))}",)
    return ()


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
    boxes = top_boxes(path)
    if "ftyp" in boxes and "moov" not in boxes:
        return RecordingError(
            path,
            "the film has no index (moov atom), so the camera never finished writing it",
            "copy it from the camera again, or mend it with the camera maker's own program",
        )
    return RecordingError(path, "holds no sound or film that can be read", "give a film or sound file")
