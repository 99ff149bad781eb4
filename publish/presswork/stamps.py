"""Stamps of folders: by which a session whose files nobody touched is known without reading them.

A stamp holds of each file its size, times, and number on the disk; any write changes the time of the last change of
status, which no program can set back. What was changed so lately that the disk's clock might not tell the next change
from it has no stamp, and is read (the "racy" entries of git's index: git, Documentation/technical/racy-git.txt).
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

from publish.presswork.sums import files_below, sum_of

COARSEST = 2_000_000_000
"""Nanoseconds that the coarsest clock of a disk takes from one time to the next (FAT)."""


class Clock:
    """The disk's own clock at the beginning of a publish."""

    def __init__(self, file: Path) -> None:
        """`file` is any file of ours on that disk: its time is set to now."""
        try:
            os.utime(file)
            self._settled = file.stat().st_mtime_ns - COARSEST
        except OSError:
            self._settled = 0

    def stamp(self, folder: Path, recording: str) -> str:
        """The stamp of a session's folder and the recording that its session.toml names; empty where it has none.

        Raises `OSError` where the folder can't be read.
        """
        seen = []
        for name, facts in _facts(folder, recording):
            if facts is not None and max(facts.st_mtime_ns, facts.st_ctime_ns) >= self._settled:
                return ""
            seen.append(f"{name}\0{_told(facts)}")
        return sum_of("\n".join(seen))


def _facts(folder: Path, recording: str) -> Iterator[tuple[str, os.stat_result | None]]:
    for entry in files_below(folder):
        yield entry.path, entry.stat()
    if recording:
        try:
            yield recording, (folder / recording).stat()
        except OSError:
            yield recording, None


def _told(facts: os.stat_result | None) -> str:
    if facts is None:
        return "gone"
    return f"{facts.st_size} {facts.st_mtime_ns} {facts.st_ctime_ns} {facts.st_ino} {facts.st_dev}"
