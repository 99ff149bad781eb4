"""Makes a recording whole: its length and an index go in, not one packet of sound or picture is changed.

A recorder that writes as it goes can't know the length, nor where to seek. The recording is copied, packet by packet,
into a file that says both; the copy is read again and compared, and only then takes the place of what was recorded.
"""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path

from capture.errors import RecordingError, ShopError
from capture.files import sync_folder
from capture.recording.journal import NAME, Ended, Journal, append_line, read_journal
from capture.recording.kinds import kind_by_ending
from capture.recording.room import KEPT_FREE, Free, free_bytes

_WRITTEN_WHOLE = frozenset({".wav"})
"""Their writer keeps the length true as it goes."""


@dataclass(frozen=True, slots=True)
class Finished:
    """What became of a recording."""

    file: Path
    seconds: float
    """Its length."""
    problem: str = ""
    """Why it lies there as it came, without index; empty where it is whole."""


def finish(folder: Path, free: Free = free_bytes) -> Finished | None:
    """Make the recording of a session's folder whole; null where it is already, or where nothing was recorded.

    The caller holds the session. What was recorded stays as it is wherever the copy fails or differs; it can be heard
    and played all the same, and the next call tries again. Raises `ShopError` where the journal can't be read.
    """
    journal = read_journal(folder)
    if journal is None:
        return None
    file = folder / journal.header.file
    if came_to_nothing(folder):
        return None
    _ended(folder, journal)
    if file.suffix in _WRITTEN_WHOLE:
        seconds, problem = journal.second, ""
    else:
        seconds, problem = _index(file, journal.second, free)
    if not problem:
        (folder / NAME).unlink()
        sync_folder(folder)
    return Finished(file, seconds, problem)


def came_to_nothing(folder: Path) -> bool:
    """True for a recording that was begun and of which not one byte came."""
    journal = read_journal(folder)
    if journal is None:
        return False
    file = folder / journal.header.file
    return not file.is_file() or file.stat().st_size == 0


def _ended(folder: Path, journal: Journal) -> None:
    """No piece may follow, also where the person never came to end it."""
    if journal.ended:
        return
    lines = os.open(folder / NAME, os.O_RDWR | getattr(os, "O_BINARY", 0))
    try:
        os.ftruncate(lines, journal.size)
        os.lseek(lines, journal.size, os.SEEK_SET)
        append_line(lines, Ended(ended=journal.second))
    except OSError as error:
        raise ShopError(folder / NAME, f"can't be written ({error.strerror})", "make room or mend it") from error
    finally:
        os.close(lines)


def _index(file: Path, second: float, free: Free) -> tuple[float, str]:
    """Length in seconds, and why the file was left as it was."""
    from capture.recording.copying import copy_whole

    if free(file.parent) < file.stat().st_size + KEPT_FREE:
        return second, "there is no room on the disk for a copy with an index"
    kind = kind_by_ending(file.suffix)
    part = file.with_name(f".{file.name}.part")
    try:
        seconds = copy_whole(file, part, kind.container if kind else "")
        with part.open("rb+") as copy:
            os.fsync(copy.fileno())
        part.replace(file)
        sync_folder(file.parent)
    except RecordingError as error:
        return second, error.problem
    except OSError as error:
        return second, f"its copy can't be written ({(error.strerror or str(error)).lower()})"
    finally:
        part.unlink(missing_ok=True)
    return seconds, ""
