"""What a bag holds beside a shop's files, by RFC 8493.

shop/bagit.txt               the version of the format
shop/bag-info.txt            what it is, and how much
shop/manifest-sha256.txt     a checksum a file
shop/tagmanifest-sha256.txt  checksums of the three above
shop/data/...                the shop's files
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path, PurePosixPath

from capture.errors import SpokeshaveError

TOP = "shop"
DATA = "data"
DECLARATION = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"
MANIFEST = "manifest-sha256.txt"
TAGS = "tagmanifest-sha256.txt"
Report = Callable[[float, float], None]
"""Called with bytes done and bytes in all."""
_ENCODED = {"%": "%25", "\n": "%0A", "\r": "%0D"}


class ArchiveError(SpokeshaveError):
    """An archive that can't be written or read."""

    def __init__(self, path: Path, problem: str, remedy: str) -> None:
        self.path = path
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{path}: {problem}; {remedy}")


def manifest_line(checksum: str, path: str) -> str:
    """A line of a manifest; line ends and percent signs in a name are encoded (RFC 8493 section 2.1.3)."""
    return f"{checksum}  {''.join(_ENCODED.get(letter, letter) for letter in path)}\n"


def read_manifest(text: str) -> dict[str, str]:
    """Checksums by path. Raises `ValueError` for a line that is none."""
    found = {}
    for line in text.removesuffix("\n").split("\n"):
        checksum, _, path = line.partition(" ")
        path = path.lstrip(" *")
        for letter, code in _ENCODED.items():
            if letter != "%":
                path = path.replace(code, letter).replace(code.lower(), letter)
        path = path.replace("%25", "%")
        if len(checksum) != 64 or not path:
            raise ValueError(line)
        found[path] = checksum.lower()
    return found


def is_safe(path: str) -> bool:
    """A path that stays where it is unpacked: relative, no step upwards, no drive, no backslash, nothing hidden.

    A hidden file is a shop's own working store; one that came from elsewhere could put words into the site.
    """
    parts = PurePosixPath(path).parts
    return (
        bool(parts)
        and not any(part.startswith(".") for part in parts)
        and not path.startswith("/")
        and ".." not in parts
        and "\\" not in path
        and "\0" not in path
        and ":" not in parts[0]
    )


def can_hold(path: str) -> bool:
    """A path below the shop's folder that can be packed, and comes out again under the same name."""
    try:
        path.encode()
    except UnicodeEncodeError:
        return False
    return is_safe(f"{TOP}/{DATA}/{path}")


def silent(done: float, whole: float) -> None:
    """Nobody watches."""
