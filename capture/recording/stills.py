"""Still pictures taken while recording, each named by its second: stills/taken-00083.4.jpg."""

from __future__ import annotations

import io
from pathlib import Path

from capture.errors import ShopError
from capture.files import write_atomic

FOLDER = "stills"


def keep_still(folder: Path, picture: bytes, second: float) -> Path:
    """Keep a JPEG in a session's folder; the same second again is the same file.

    Raises `ShopError` where the picture is no JPEG or the disk refuses.
    """
    path = folder / FOLDER / f"taken-{max(second, 0.0):07.1f}.jpg"
    if not _is_jpeg(picture):
        raise ShopError(path, "what came is no JPEG picture", "take it again")
    try:
        path.parent.mkdir(exist_ok=True)
        write_atomic(path, picture)
    except OSError as error:
        raise ShopError(path, f"can't be written ({error.strerror})", "make room or mend the folder") from error
    return path


def _is_jpeg(picture: bytes) -> bool:
    """True where it opens as one: the first bytes are those of ITU-T T.81 (SOI marker) and a frame comes out."""
    if not picture.startswith(b"\xff\xd8\xff"):
        return False
    import av
    from av.error import FFmpegError

    try:
        with av.open(io.BytesIO(picture), "r", format="jpeg_pipe") as container:
            return next(container.decode(video=0), None) is not None
    except FFmpegError:
        return False
