"""The forms in which a recording may come from the bench."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Kind:
    """A form of recording."""

    mime: str
    """Media type without parameters (RFC 6838), as a browser's MediaRecorder names it."""
    ending: str
    """Of the file's name."""
    container: str
    """FFmpeg's name for its writer."""
    film: bool
    """True where there is a picture."""
    rate: int
    """Bytes a second to expect before anything was measured: 128 kbit/s of sound, 2.5 Mbit/s of picture."""


_SOUND, _FILM = 16_000, 330_000

KINDS = (
    Kind("video/webm", ".webm", "webm", True, _FILM),
    Kind("audio/webm", ".weba", "webm", False, _SOUND),
    Kind("video/mp4", ".mp4", "mp4", True, _FILM),
    Kind("audio/mp4", ".m4a", "mp4", False, _SOUND),
    Kind("audio/ogg", ".ogg", "ogg", False, _SOUND),
    Kind("audio/wav", ".wav", "wav", False, 96_000),
)
"""What browsers record (MediaStream Recording, W3C), and the plain sound that is written without one."""


def kind_of(mime: str) -> Kind | None:
    """The kind of a media type, whose parameters don't matter; null for one that is not known."""
    bare = mime.split(";")[0].strip().lower()
    return next((kind for kind in KINDS if kind.mime == bare), None)


def kind_by_ending(ending: str) -> Kind | None:
    """The kind whose files end so."""
    return next((kind for kind in KINDS if kind.ending == ending), None)
