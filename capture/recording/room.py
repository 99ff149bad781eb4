"""How much more a disk can hold of a recording."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

KEPT_FREE = 256 * 1024 * 1024
"""Bytes that a recording leaves free: a disk that is full to the last byte harms every other program of the machine,
and the transcript and the page need some."""

SHORT_MINUTES = 15.0
"""From this on a person is told: long enough to end a job in order."""

Free = Callable[[Path], int]
"""Tells the free bytes of the disk that a folder lies on."""


@dataclass(frozen=True, slots=True)
class Room:
    """What is left for a recording."""

    minutes: float
    """How long it may still go on."""
    state: Literal["plenty", "short", "none"]

    @property
    def line(self) -> str:
        """The same in words; empty where there is plenty."""
        if self.state == "none":
            return "The disk is nearly full: the recording has to end here. All of it so far is kept."
        if self.state == "short":
            return f"The disk is getting full: room for about {max(1, int(self.minutes))} more minutes."
        return ""


def free_bytes(folder: Path) -> int:
    """Bytes that this user may still write to the disk of `folder`, or of the nearest folder above that exists."""
    while not folder.exists() and folder != folder.parent:
        folder = folder.parent
    return shutil.disk_usage(folder).free


def room_for(folder: Path, rate: float, free: Free = free_bytes) -> Room:
    """The room in `folder` for a recording that takes `rate` bytes a second."""
    minutes = max(free(folder) - KEPT_FREE, 0) / max(rate, 1.0) / 60
    if minutes * 60 < 1:
        return Room(0.0, "none")
    return Room(minutes, "short" if minutes < SHORT_MINUTES else "plenty")
