"""Writing to disk so that a file is whole or untouched, whatever happens in between."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path


def write_atomic(path: Path, content: str | bytes) -> None:
    """Write `content` to `path` in one step: temporary file beside it, fsync, rename, fsync of the folder.

    Text is written as UTF-8. Raises `OSError` where the disk refuses; the old content is then still there.
    """
    data = content.encode() if isinstance(content, str) else content
    handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.", suffix=".part")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        # mkstemp makes files for the owner alone; a shop's files are as readable as the person's umask says.
        Path(temporary).chmod(0o666 & ~_umask())
        Path(temporary).replace(path)
    except BaseException:
        Path(temporary).unlink(missing_ok=True)
        raise
    sync_folder(path.parent)


def sync_folder(folder: Path) -> None:
    """Have the disk remember which files are in `folder`; does nothing where the system has no such call."""
    if not hasattr(os, "O_DIRECTORY"):
        return
    descriptor = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
