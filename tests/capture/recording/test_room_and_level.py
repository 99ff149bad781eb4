"""Room on the disk and the loudness of the sound, each with the words for it."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import numpy as np
import pytest

from capture.recording import room_for
from capture.recording.level import WORDS, Level, bounds, decibels
from capture.recording.room import KEPT_FREE, free_bytes

RATE = 16_000


@pytest.mark.parametrize(
    ("minutes", "state", "line"),
    [
        (600, "plenty", ""),
        (15, "plenty", ""),
        (14, "short", "The disk is getting full: room for about 14 more minutes."),
        (0.5, "short", "The disk is getting full: room for about 1 more minutes."),
        (0.01, "none", "The disk is nearly full: the recording has to end here. All of it so far is kept."),
        (-5, "none", "The disk is nearly full: the recording has to end here. All of it so far is kept."),
    ],
)
def test_room_is_told_in_minutes(minutes: float, state: str, line: str) -> None:
    room = room_for(Path(), RATE, lambda _: KEPT_FREE + int(minutes * 60 * RATE))
    assert (room.state, room.line) == (state, line)


def test_room_of_a_shop_that_is_not_there_yet_is_that_of_the_disk(tmp_path: Path) -> None:
    statistics = subprocess.run(["df", "--output=avail", "-B1", tmp_path], capture_output=True, text=True, check=True)
    available = int(statistics.stdout.split()[-1])
    assert free_bytes(tmp_path / "not" / "yet") == pytest.approx(available, rel=0.05)


@pytest.mark.parametrize("amplitude", [1.0, 0.5, 0.01])
def test_levels_are_those_that_ffmpeg_measures(amplitude: float, tmp_path: Path) -> None:
    # Outside judge: ffmpeg's volumedetect (mean_volume: root mean square, max_volume: peak, both of full scale).
    samples = amplitude * np.sin(2 * np.pi * 440 * np.arange(48_000) / 48_000)
    raw = tmp_path / "tone.raw"
    raw.write_bytes((samples * 32767).astype("<i2").tobytes())
    command = ["ffmpeg", "-f", "s16le", "-ar", "48000", "-ac", "1", "-i", raw, "-af", "volumedetect", "-f", "null", "-"]
    told = subprocess.run([str(part) for part in command], capture_output=True, text=True, check=True).stderr
    mean, most = (float(found) for found in re.findall(r"(?:mean|max)_volume: (-?[\d.]+) dB", told))
    assert decibels(float(np.sqrt(np.mean(samples**2)))) == pytest.approx(mean, abs=0.1)
    assert decibels(float(np.max(np.abs(samples)))) == pytest.approx(most, abs=0.1)


def heard(*stretches: tuple[float, float, float]) -> list[str]:
    """The verdict at the end of each stretch of (seconds, power, peak), a tenth of a second at a time."""
    level, second, verdicts = Level(), 0.0, []
    for seconds, power, peak in stretches:
        verdict = ""
        for _ in range(round(seconds * 10)):
            second += 0.1
            verdict = level.hear(second, power, peak)
        verdicts.append(verdict)
    return verdicts


SPEECH, ROOM, MUTED = (-22.0, -9.0), (-58.0, -47.0), (-120.0, -120.0)


def test_speech_is_good() -> None:
    assert heard((10, *SPEECH)) == ["good"]


def test_a_person_at_work_may_be_silent_for_a_while() -> None:
    assert heard((10, *SPEECH), (bounds().quiet_after - 1, *ROOM), (5, *ROOM)) == ["good", "good", "quiet"]


def test_one_word_is_enough() -> None:
    assert heard((20, *ROOM), (0.3, *SPEECH), (3, *ROOM)) == ["quiet", "good", "good"]


def test_a_muted_microphone_is_told_apart_from_a_quiet_room() -> None:
    assert heard((20, *MUTED)) == ["nothing"]


def test_clipping_is_told_at_once_and_for_a_while() -> None:
    assert heard((5, *SPEECH), (0.1, -5, 0.0), (2, *SPEECH), (3, *SPEECH)) == ["good", "clipped", "clipped", "good"]


def test_every_verdict_has_its_words() -> None:
    assert set(WORDS) == {"nothing", "quiet", "clipped", "good"}
    assert len(set(WORDS.values())) == 4
