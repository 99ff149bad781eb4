"""The recording, by ranges, so that a player seeks in a film of many gigabytes without reading it.

Ranges, their multipart answers and status 416 are RFC 9110, section 14; Starlette's `FileResponse` answers them.
"""

from __future__ import annotations

from pathlib import Path, PurePath

from starlette.responses import FileResponse

_KINDS = {
    ".mp4": "video/mp4", ".m4v": "video/mp4", ".mov": "video/mp4", ".webm": "video/webm", ".mkv": "video/webm",
    ".ogv": "video/ogg", ".mp3": "audio/mpeg", ".m4a": "audio/mp4", ".aac": "audio/aac", ".wav": "audio/wav",
    ".ogg": "audio/ogg", ".oga": "audio/ogg", ".opus": "audio/ogg", ".flac": "audio/flac", ".weba": "audio/webm",
}  # fmt: skip
"""By extension, whatever the system's own table says. Browsers play QuickTime and Matroska only under a kin's name."""


def film_answer(recording: Path) -> FileResponse:
    """A recording, or the range of it that is asked for."""
    kind = _KINDS.get(PurePath(recording).suffix.lower(), "application/octet-stream")
    return FileResponse(recording, media_type=kind, headers={"cache-control": "private, no-cache"})
