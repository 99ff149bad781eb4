"""Stills of a session's steps, kept in its folder: stills/step-<tenths of a second>-<the film's mark>.jpg.

A film that is cut anew makes others; the same film gives the same ones, byte for byte, also where its folder was copied
to another disk: the mark is over its bytes. Stills that are named by an older program, after the film's size and time,
are taken for as long as these hold.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

from capture.errors import RecordingError
from capture.files import write_atomic
from capture.fingerprint import fingerprint

FOLDER = "stills"
_NAME = re.compile(r"step-(\d+)-([0-9a-f]+(?:-[0-9a-f]+)?)\.jpg")
_MOST = 200
"""Steps of which stills are made: no procedure has more, and each takes a moment."""


def tenths_of(second: float) -> int:
    """The name of a second among stills."""
    return max(round(second * 10), 0)


def make_step_stills(folder: Path, recording: Path, seconds: Iterable[float]) -> int:
    """Make the stills that are lacking; gives how many were made. What can't be read there is left out.

    Raises `OSError` where the disk refuses.
    """
    from capture.sharp import sharpest

    kept = step_stills(folder, recording)
    made = 0
    for second in list(dict.fromkeys(seconds))[:_MOST]:
        tenths = tenths_of(second)
        if tenths in kept:
            continue
        try:
            picture = sharpest(recording, tenths / 10)
        except RecordingError:
            continue
        if picture is not None:
            path = folder / FOLDER / f"step-{tenths:07}-{_mark(recording)}.jpg"
            path.parent.mkdir(exist_ok=True)
            write_atomic(path, picture)
            made += 1
    return made


def step_stills(folder: Path, recording: Path) -> dict[int, Path]:
    """The stills that are kept of a film as it is now, by their tenth of a second."""
    home = folder / FOLDER
    found = (path for path in sorted(home.iterdir())) if home.is_dir() else ()
    named = [(path, name) for path in found if (name := _NAME.fullmatch(path.name)) is not None]
    if not named:
        return {}
    marks = {_mark(recording), _size_and_time(recording)}
    return {int(name[1]): path for path, name in named if name[2] in marks}


def _mark(recording: Path) -> str:
    return fingerprint(recording)[:16]


def _size_and_time(recording: Path) -> str:
    facts = recording.stat()
    return f"{facts.st_size:x}-{facts.st_mtime_ns:x}"
