"""Sound from a microphone into a WAV file that is whole after every second."""

from __future__ import annotations

import os
import wave
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO

import numpy as np

from capture.errors import ShopError
from capture.files import sync_folder
from capture.recording.journal import NAME, Ended, Header, Piece, append_line, begin_journal
from capture.recording.level import Level, Verdict, decibels
from capture.recording.microphone import RATE, WIDTH, SoundInput
from capture.recording.room import Free, Room, free_bytes, room_for

_STEP = RATE // 10
"""Samples between two looks at the level."""

_FULL = 32_768
"""A 16-bit sample at full scale."""


@dataclass(frozen=True, slots=True)
class Heard:
    """A tenth of a second."""

    second: float
    """Where the recording is."""
    verdict: Verdict
    power: float
    """Mean power, in decibels of full scale."""
    room: Room


def record_sound(
    folder: Path, source: SoundInput, go_on: Callable[[Heard], bool], free: Free = free_bytes
) -> tuple[float, str]:
    """Record `source` into a session's folder until `go_on` says no; gives seconds, and why it ended by itself.

    `go_on` is asked ten times a second. Every second is on the disk before the next is over, and the file's header says
    its length, so that a pulled plug costs that second. Raises `ShopError` where the disk refuses, and what `source`
    raises; what was recorded so far is kept.
    """
    path = folder / "recording.wav"
    level, frames, piece, why = Level(), 0, 0, ""
    room = room_for(folder, RATE * WIDTH, free)
    try:
        begin_journal(folder, Header(file=path.name))
        journal = os.open(folder / NAME, os.O_WRONLY | os.O_APPEND | getattr(os, "O_BINARY", 0))
        try:
            with path.open("wb") as file, wave.open(file, "wb") as sound:
                sound.setparams((1, WIDTH, RATE, 0, "NONE", "not compressed"))
                sync_folder(folder)
                while True:
                    samples = source.read(_STEP)
                    sound.writeframes(samples)
                    frames += len(samples) // WIDTH
                    if frames >= (piece + 1) * RATE:
                        _keep(file, journal, piece, frames)
                        piece += 1
                        room = room_for(folder, RATE * WIDTH, free)
                    if room.state == "none":
                        why = room.line
                        break
                    if not go_on(_heard(level, samples, frames / RATE, room)):
                        break
                _sync(file)
            append_line(journal, Ended(ended=frames / RATE))
        finally:
            os.close(journal)
    except OSError as error:
        raise ShopError(path, f"can't be written ({error.strerror})", "mend it; what was recorded is kept") from error
    return frames / RATE, why


def _keep(sound: BinaryIO, journal: int, piece: int, frames: int) -> None:
    _sync(sound)
    append_line(journal, Piece(piece=piece, end=frames * WIDTH, second=frames / RATE))


def _sync(file: BinaryIO) -> None:
    file.flush()
    os.fsync(file.fileno())


def _heard(level: Level, samples: bytes, second: float, room: Room) -> Heard:
    amplitudes = np.frombuffer(samples, dtype="<i2").astype(np.float64) / _FULL
    power = decibels(float(np.sqrt(np.mean(amplitudes**2)))) if len(amplitudes) else decibels(0)
    peak = decibels(float(np.max(np.abs(amplitudes)))) if len(amplitudes) else decibels(0)
    return Heard(second, level.hear(second, power, peak), power, room)
