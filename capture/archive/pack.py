"""Packs a shop: every file but locks, half-written files and the site, which can be made again."""

from __future__ import annotations

import hashlib
import os
import tempfile
import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path, PurePath
from typing import IO

from capture.archive import bag
from capture.archive.bag import ArchiveError, Report, silent
from capture.files import sync_folder
from capture.shop import Shop

_PIECE = 1 << 20
_PACKED_ALREADY = frozenset(
    {".mp4", ".mov", ".webm", ".mkv", ".m4a", ".mp3", ".ogg", ".opus", ".flac", ".jpg", ".jpeg", ".png", ".webp"}
)
_DAY = (1980, 1, 1, 0, 0, 0)
"""One date for all files, so that the same shop gives the same archive. The earliest that ZIP knows."""


@dataclass(frozen=True, slots=True)
class Packed:
    """What was packed."""

    archive: Path
    files: int
    size: int
    """Bytes of the files before packing."""
    outside: tuple[Path, ...]
    """Recordings that sessions name and that lie outside the shop: they are not in the archive."""


def export_shop(shop: Shop, archive: Path, report: Report | None = None) -> Packed:
    """Write the whole shop to `archive`, in one step: a file that stood there stays until the new one is whole.

    `report` gets bytes done and bytes in all. Raises `ArchiveError` where the disk refuses, or a file has a name
    that an archive can't hold.
    """
    if archive.resolve().is_relative_to(shop.root.resolve()):
        raise ArchiveError(archive, "lies in the shop itself", "name a place outside it")
    files = tuple(_files(shop))
    total = sum(path.stat().st_size for _, path in files)
    try:
        handle, name = tempfile.mkstemp(dir=archive.parent, prefix=f".{archive.name}.", suffix=".part")
    except OSError as error:
        raise ArchiveError(archive, f"can't be written ({error.strerror})", "name another place") from error
    temporary = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            _write(file, files, total, report or silent)
            file.flush()
            os.fsync(file.fileno())
        temporary.replace(archive)
    except OSError as error:
        raise ArchiveError(
            archive, f"can't be written ({error.strerror})", "make room, or name another place"
        ) from error
    finally:
        temporary.unlink(missing_ok=True)
    sync_folder(archive.parent)
    return Packed(archive, len(files), total, tuple(_outside(shop)))


def _write(file: IO[bytes], files: tuple[tuple[str, Path], ...], total: int, report: Report) -> None:
    done, lines = 0, []
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED, allowZip64=True) as packed:
        for name, path in files:
            checksum = hashlib.sha256()
            with (
                path.open("rb") as source,
                packed.open(_entry(f"{bag.DATA}/{name}", path), "w", force_zip64=True) as sink,
            ):
                while piece := source.read(_PIECE):
                    checksum.update(piece)
                    sink.write(piece)
                    done += len(piece)
                    report(done, total)
            lines.append(bag.manifest_line(checksum.hexdigest(), f"{bag.DATA}/{name}"))
        tags = {
            "bagit.txt": bag.DECLARATION,
            "bag-info.txt": f"Payload-Oxum: {total}.{len(files)}\nExternal-Description: a shop of Spokeshave\n",
            bag.MANIFEST: "".join(lines),
        }
        for name, text in tags.items():
            packed.writestr(_entry(name), text)
        sums = (bag.manifest_line(hashlib.sha256(text.encode()).hexdigest(), name) for name, text in tags.items())
        packed.writestr(_entry(bag.TAGS), "".join(sums))


def _entry(name: str, path: Path | None = None) -> zipfile.ZipInfo:
    entry = zipfile.ZipInfo(f"{bag.TOP}/{name}", _DAY)
    stored = path is not None and path.suffix.lower() in _PACKED_ALREADY
    entry.compress_type = zipfile.ZIP_STORED if stored else zipfile.ZIP_DEFLATED
    entry.external_attr = 0o100644 << 16
    return entry


def _files(shop: Shop) -> Iterator[tuple[str, Path]]:
    """Name in the shop and place of each file, in order: all there is, so that no kind of file can be left behind."""
    for path in sorted(shop.root.rglob("*")):
        name = path.relative_to(shop.root)
        if not path.is_file() or not _belongs(name):
            continue
        if not bag.can_hold(name.as_posix()):
            raise ArchiveError(path, "has a name that an archive can't hold", "give it another one")
        yield name.as_posix(), path


def _belongs(name: PurePath) -> bool:
    """No working file of ours, and nothing of the site."""
    return not any(part.startswith(".") for part in name.parts) and name.suffix != ".lock" and name.parts[0] != "public"


def _outside(shop: Shop) -> Iterator[Path]:
    for session in shop.sessions():
        recording = session.recording_file
        if recording is not None and not _lies_in(recording, shop.root.resolve()):
            yield recording


def _lies_in(recording: Path, root: Path) -> bool:
    return recording.is_relative_to(root) and _belongs(recording.relative_to(root))
