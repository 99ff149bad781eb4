"""Unpacks a shop from an archive: everything is checked before anything stands where the shop will be."""

from __future__ import annotations

import hashlib
import shutil
import tempfile
import zipfile
from collections.abc import Callable
from pathlib import Path

from capture.archive import bag
from capture.archive.bag import ArchiveError, Report, silent
from capture.files import sync_folder
from capture.shop import Shop

_PIECE = 1 << 20
_TEXT_LIMIT = 64 << 20
"""No manifest is longer: some hundred thousand files."""
_BROKEN = "copy it again from where it came, or take another copy"


def import_shop(archive: Path, root: Path, report: Report | None = None) -> Shop:
    """Make the shop in `archive` anew at `root`, which is a new or an empty folder.

    Raises `ArchiveError` where the file is no archive of a shop, a name in it leads outside, a file is lacking, is one
    too many or differs from its checksum, or the disk has no room; `root` is then as it was.
    """
    watch = report or silent
    if root.exists() and (not root.is_dir() or any(root.iterdir())):
        raise ArchiveError(root, "is not an empty folder", "name a new or empty folder with --shop")
    try:
        with zipfile.ZipFile(archive) as packed:
            return _unpack(packed, archive, root, watch)
    except FileNotFoundError as error:
        raise ArchiveError(archive, "there is no such file", "check the path") from error
    except (zipfile.BadZipFile, NotImplementedError, EOFError, RuntimeError) as error:
        raise ArchiveError(archive, f"is no archive that can be read ({error})", _BROKEN) from error
    except OSError as error:
        raise ArchiveError(
            archive, f"can't be unpacked ({error.strerror or error})", "make room, then try again"
        ) from error


def _unpack(packed: zipfile.ZipFile, archive: Path, root: Path, report: Report) -> Shop:
    sums = _checked(packed, archive)
    total = sum(packed.getinfo(f"{bag.TOP}/{name}").file_size for name in sums)
    parent = root.parent
    parent.mkdir(parents=True, exist_ok=True)
    if shutil.disk_usage(parent).free < total:
        raise ArchiveError(archive, f"needs {total / 1e6:.0f} MB, and {parent} has less", "make room, then try again")
    with tempfile.TemporaryDirectory(dir=parent, prefix=f".{root.name}.", suffix=".part") as name:
        staging = Path(name) / "shop"
        staging.mkdir()
        done = 0
        for path, checksum in sums.items():
            done = _unpack_one(packed, archive, path, checksum, staging, done, lambda so_far: report(so_far, total))
        Shop.open(staging)
        (staging / "sessions").mkdir(exist_ok=True)
        if root.exists():
            root.rmdir()
        staging.rename(root)
    sync_folder(parent)
    return Shop.open(root)


def _unpack_one(
    packed: zipfile.ZipFile,
    archive: Path,
    path: str,
    checksum: str,
    staging: Path,
    done: int,
    report: Callable[[float], None],
) -> int:
    """Write one file and hold it against its checksum; bytes done so far."""
    target = staging / path.removeprefix(f"{bag.DATA}/")
    target.parent.mkdir(parents=True, exist_ok=True)
    found, room = hashlib.sha256(), packed.getinfo(f"{bag.TOP}/{path}").file_size
    with packed.open(f"{bag.TOP}/{path}") as source, target.open("xb") as sink:
        while piece := source.read(_PIECE):
            room -= len(piece)
            if room < 0:
                break
            found.update(piece)
            sink.write(piece)
            done += len(piece)
            report(done)
    if found.hexdigest() != checksum:
        raise ArchiveError(archive, f"{path} in it is not what was packed", _BROKEN)
    return done


def _checked(packed: zipfile.ZipFile, archive: Path) -> dict[str, str]:
    """The checksum of each file by its path in the bag, once names and completeness are in order."""
    names = [info.filename for info in packed.infolist() if not info.is_dir()]
    if f"{bag.TOP}/bagit.txt" not in names:
        raise ArchiveError(archive, "holds no shop", "name a file that `spokeshave export` wrote")
    if len(set(names)) != len(names) or not all(name.startswith(f"{bag.TOP}/") and bag.is_safe(name) for name in names):
        raise ArchiveError(archive, "holds names that lead outside of it, or one name twice", _BROKEN)
    try:
        sums = bag.read_manifest(_text(packed, archive, bag.MANIFEST))
        tags = bag.read_manifest(_text(packed, archive, bag.TAGS))
    except (ValueError, KeyError) as error:
        raise ArchiveError(archive, f"has no list of its files that can be read ({error})", _BROKEN) from error
    for tag, checksum in tags.items():
        if hashlib.sha256(_text(packed, archive, tag).encode()).hexdigest() != checksum:
            raise ArchiveError(archive, f"{tag} in it is not what was packed", _BROKEN)
    held = {name.removeprefix(f"{bag.TOP}/") for name in names if name.startswith(f"{bag.TOP}/{bag.DATA}/")}
    if held != set(sums):
        odd = sorted(held ^ set(sums))[0]
        raise ArchiveError(archive, f"{odd} is lacking in it, or is one too many", _BROKEN)
    return sums


def _text(packed: zipfile.ZipFile, archive: Path, name: str) -> str:
    info = packed.getinfo(f"{bag.TOP}/{name}")
    if info.file_size > _TEXT_LIMIT:
        raise ArchiveError(archive, f"{name} in it is too long", _BROKEN)
    return packed.read(info).decode("utf-8")
