"""The model that hears unless another is named: Whisper base with what it was taught about measures."""

from __future__ import annotations

import errno
import hashlib
import shutil
from pathlib import Path

from filelock import FileLock

from capture import model_files
from capture.adapter import PATH, STRENGTH, adapted, read_adapter
from capture.errors import ModelError

NAME = "whisper-base, taught measures"
"""What the model is called in messages and transcripts."""


def taught_model() -> Path:
    """The folder with the taught model, made from the published one first where need be.

    Safe to call from several processes at once. Raises `ModelError` as `shipped_model` does.
    """
    published = model_files.shipped_model()
    taught = hashlib.sha256(PATH.read_bytes() + str(STRENGTH).encode()).hexdigest()[:12]
    folder = published.with_name(f"{published.name}-taught-{taught}")
    weights = folder / "model.bin"
    if _complete(folder, published):
        return folder
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with FileLock(folder / "teaching.lock"):
            if not _complete(folder, published):
                for name in model_files.SIDE_FILES:
                    shutil.copyfile(published / name, folder / name)
                model_files.write_checked(weights, adapted(published / "model.bin", read_adapter()))
    except OSError as error:
        reason = "the disk is full" if error.errno == errno.ENOSPC else (error.strerror or str(error)).lower()
        raise ModelError(
            NAME,
            f"{folder} can't be written ({reason})",
            f"free {model_files.SIZE // 1_000_000 + 10} MB there, or let {model_files.CACHE_VARIABLE} name another",
        ) from error
    return folder


def _complete(folder: Path, published: Path) -> bool:
    weights = folder / "model.bin"
    return (
        all((folder / name).is_file() for name in model_files.SIDE_FILES)
        and weights.is_file()
        and weights.stat().st_size == (published / "model.bin").stat().st_size
    )
