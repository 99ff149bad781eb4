"""Sums over what a site is made from: the program, a session's files, any texts. No clock time goes into them."""

from __future__ import annotations

import hashlib
import os
import platform
from collections.abc import Iterator
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

from capture.shop import ShopSettings

_PACKAGES = Path(__file__).parents[2]
_OURS = ("capture", "extract", "publish")
_PROGRAM = frozenset({".py", ".html", ".css", ".js", ".svg", ".toml", ".json", ".txt"})
_OTHERS = ("feedgen", "jinja2", "lxml", "Markdown", "markupsafe", "nh3", "pint", "pydantic", "python-slugify")
"""Libraries whose version may change what a page says."""
_TEXTS = frozenset({".json", ".jsonl", ".toml", ".md", ".txt", ".vtt", ".srt"})
_ENDS = 1 << 16
"""Bytes read at both ends of a recording or picture: pages hold no more of one than its name, and the site has the file
itself by a link."""


def sum_of(*parts: bytes | str) -> str:
    """One sum over these parts, each kept apart from the next."""
    pieces: list[bytes] = []
    for part in parts:
        data = part.encode("utf-8", "surrogatepass") if isinstance(part, str) else part
        pieces += (len(data).to_bytes(8, "big"), data)
    return hashlib.blake2b(b"".join(pieces), digest_size=16).hexdigest()


def edition_of(settings: ShopSettings) -> str:
    """The sum over the program that makes the site and the shop's settings: another one makes everything anew."""
    return sum_of(program(), settings.model_dump_json())


@cache
def program() -> str:
    """The sum over every file of the program that a page may depend on, and the libraries' versions.

    Of a file its size and time: to read six hundred of them would take as long as to look at a thousand sessions, and a
    program that was installed again makes the site anew once more at worst.
    """
    parts = [platform.python_version(), *(_version(name) for name in _OTHERS)]
    for top in _OURS:
        for one in files_below(_PACKAGES / top):
            if Path(one.name).suffix in _PROGRAM:
                facts = one.stat()
                parts.append(f"{os.path.relpath(one.path, _PACKAGES)} {facts.st_size} {facts.st_mtime_ns}")
    return sum_of(*parts)


def session_sum(folder: Path, recording: str) -> str:
    """The sum over a session's files and the recording that its session.toml names, wherever that lies.

    Texts are read whole; of a recording or picture its size and both ends. Raises `OSError` where one can't be read.
    """
    parts: list[bytes | str] = []
    for path in (Path(one.path) for one in files_below(folder)):
        parts += [str(path.relative_to(folder)), _read(path)]
    if recording:
        named = folder / recording
        parts += [recording, _read(named) if named.is_file() else "gone"]
    return sum_of(*parts)


def file_sum(path: Path) -> str:
    """The sum over a file's bytes; empty where it can't be read."""
    try:
        return sum_of(path.read_bytes())
    except OSError:
        return ""


def files_below(folder: Path | str) -> Iterator[os.DirEntry[str]]:
    """Every file below a folder, in an order of its own; hidden ones are nobody's content."""
    with os.scandir(folder) as found:
        entries = sorted(found, key=lambda one: one.name)
    for entry in entries:
        if entry.name.startswith((".", "__pycache__")):
            continue
        if entry.is_dir():
            yield from files_below(entry.path)
        elif entry.is_file():
            yield entry


def _read(path: Path) -> bytes:
    with path.open("rb") as file:
        if path.suffix.lower() in _TEXTS:
            return file.read()
        size = os.fstat(file.fileno()).st_size
        start = file.read(_ENDS)
        file.seek(max(size - _ENDS, 0))
        return b"%d:" % size + start + file.read(_ENDS)


def _version(name: str) -> str:
    try:
        return f"{name} {version(name)}"
    except PackageNotFoundError:
        return name
