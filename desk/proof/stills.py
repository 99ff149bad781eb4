"""Stills of a film, made when they are asked for and kept beside the session."""

from __future__ import annotations

from pathlib import Path
from threading import BoundedSemaphore

from capture.files import write_atomic
from capture.shop import Session

_STILLS = "stills"
_AT_ONCE = BoundedSemaphore(2)
"""Decoding takes all cores by itself; a list that is scrolled through must not start fifty."""


def still_file(session: Session, second: float) -> Path | None:
    """The still of a session's film at a second; null where there is no film, or no picture in it.

    Raises `RecordingError` where the film can't be read there.
    """
    recording = session.recording_file
    if recording is None:
        return None
    path = session.folder / _STILLS / _name(recording, second)
    if path.is_file():
        return path
    from capture.still import still

    with _AT_ONCE:
        picture = still(recording, second)
    if picture is None:
        return None
    path.parent.mkdir(exist_ok=True)
    write_atomic(path, picture)
    return path


def _name(recording: Path, second: float) -> str:
    """A name that another film, or the same one cut anew, does not share."""
    facts = recording.stat()
    return f"{round(second * 10):07}-{facts.st_size:x}-{facts.st_mtime_ns:x}.jpg"
