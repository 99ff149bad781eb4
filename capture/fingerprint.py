"""Telling big files apart without reading all of them."""

from __future__ import annotations

import hashlib
from pathlib import Path

_ENDS = 1 << 20


def fingerprint(path: Path) -> str:
    """A sum over size, first and last megabyte of a file. Raises `OSError` where it can't be read."""
    size = path.stat().st_size
    digest = hashlib.sha256(str(size).encode())
    with path.open("rb") as file:
        digest.update(file.read(_ENDS))
        file.seek(max(size - _ENDS, 0))
        digest.update(file.read(_ENDS))
    return digest.hexdigest()
