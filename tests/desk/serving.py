"""The command `spokeshave proof` at work, as a person starts it."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


@contextmanager
def proofing(shop: Path, *more: str) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """`spokeshave proof` at work, with the address that it printed."""
    command = [sys.executable, "-m", "desk", "proof", "--shop", str(shop), "--no-browser", *more]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        try:
            yield process, process.stdout.readline().strip()
        finally:
            process.kill()
