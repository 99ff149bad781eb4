"""Sound without a browser: a made input in the place of a sound card."""

from __future__ import annotations

import builtins
import json
import re
import signal
import subprocess
import sys
import time
import wave
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from capture.media import probe
from capture.recording import finish
from capture.recording.journal import read_journal
from capture.recording.microphone import RATE, MicrophoneError, open_microphone
from capture.recording.room import KEPT_FREE
from capture.recording.sound_file import Heard, record_sound


class Ramp:
    """Counts: sample n is n, so that every lost or doubled sample shows."""

    def __init__(self, seconds: float = 1e9, pace: float = 0) -> None:
        self.at = 0
        self.pace = pace

    def read(self, frames: int) -> bytes:
        time.sleep(self.pace)
        samples = np.arange(self.at, self.at + frames, dtype=np.int64).astype("<i2")
        self.at += frames
        return samples.tobytes()


def counted(path: Path) -> int:
    """Samples of a file; fails where one is missing, doubled or out of place."""
    with wave.open(str(path)) as sound:
        assert (sound.getnchannels(), sound.getsampwidth(), sound.getframerate()) == (1, 2, RATE)
        samples = np.frombuffer(sound.readframes(sound.getnframes()), "<i2")
    assert np.array_equal(samples, np.arange(len(samples), dtype=np.int64).astype("<i2"))
    return len(samples)


def until(second: float) -> Any:
    return lambda heard: heard.second < second


def test_every_sample_is_in_the_file(tmp_path: Path) -> None:
    seconds, why = record_sound(tmp_path, Ramp(), until(3.5))
    assert (seconds, why) == (3.5, "")
    assert counted(tmp_path / "recording.wav") == 3.5 * RATE
    assert probe(tmp_path / "recording.wav").duration == 3.5


def test_ended_it_is_whole(tmp_path: Path) -> None:
    record_sound(tmp_path, Ramp(), until(2.5))
    done = finish(tmp_path)
    assert done is not None
    assert (done.seconds, done.problem) == (2.5, "")
    assert [path.name for path in tmp_path.iterdir()] == ["recording.wav"]


def test_the_level_is_told_ten_times_a_second(tmp_path: Path) -> None:
    told: list[Heard] = []

    def listen(heard: Heard) -> bool:
        told.append(heard)
        return heard.second < 1

    record_sound(tmp_path, Ramp(), listen)
    assert [round(one.second, 1) for one in told] == [round(at / 10, 1) for at in range(1, 11)]
    assert told[9].verdict == "clipped", "the ramp reaches full scale"


def test_it_ends_in_order_when_the_disk_gets_full(tmp_path: Path) -> None:
    free = iter([10**12, KEPT_FREE + 10**6, KEPT_FREE])
    seconds, why = record_sound(tmp_path, Ramp(), lambda _: True, lambda _: next(free))
    assert seconds == 2.0
    assert why.startswith("The disk is nearly full")
    assert counted(tmp_path / "recording.wav") == 2 * RATE


def test_a_microphone_that_goes_away_leaves_what_was_recorded(tmp_path: Path) -> None:
    class Unplugged(Ramp):
        def read(self, frames: int) -> bytes:
            if self.at >= 1.5 * RATE:
                raise MicrophoneError("the microphone went away", "plug it in")
            return super().read(frames)

    with pytest.raises(MicrophoneError):
        record_sound(tmp_path, Unplugged(), lambda _: True)
    assert counted(tmp_path / "recording.wav") == 1.5 * RATE


def test_killed_it_loses_two_seconds_at_most(tmp_path: Path) -> None:
    script = (
        "from pathlib import Path\n"
        "from tests.capture.recording.test_sound_file import Ramp\n"
        "from capture.recording.sound_file import record_sound\n"
        f"record_sound(Path({str(tmp_path)!r}), Ramp(pace=0.1), lambda one: print(one.second, flush=True) or True)\n"
    )
    with subprocess.Popen([sys.executable, "-c", script], stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        for line in process.stdout:
            if float(line) >= 3.7:
                process.send_signal(signal.SIGKILL)
                break
    assert counted(tmp_path / "recording.wav") >= (3.7 - 2) * RATE
    journal = read_journal(tmp_path)
    assert journal is not None
    assert not journal.ended
    assert journal.second >= 3.7 - 2
    done = finish(tmp_path)
    assert done is not None
    assert done.problem == ""


@pytest.mark.parametrize(
    ("error", "told"), [(ImportError(), "install `spokeshave[mic]`"), (OSError("PortAudio"), "libportaudio2")]
)
def test_what_is_lacking_is_told_in_one_line(error: Exception, told: str, monkeypatch: pytest.MonkeyPatch) -> None:
    really = builtins.__import__

    def lacking(name: str, *more: Any) -> Any:
        if name == "sounddevice":
            raise error
        return really(name, *more)

    monkeypatch.setattr(builtins, "__import__", lacking)
    with pytest.raises(MicrophoneError, match=re.escape(told)), open_microphone():
        pass


class _PortAudioError(Exception):
    pass


@pytest.mark.parametrize(("named", "device"), [("", None), ("usb", 2), ("built", 0)])
def test_a_microphone_is_found_by_a_part_of_its_name(
    named: str, device: int | None, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened: list[Any] = []
    _stand_in(monkeypatch, opened)
    with open_microphone(named) as source:
        assert source.read(3) == b"\x00\x00" * 3
    assert opened == [{"samplerate": RATE, "channels": 1, "dtype": "int16", "device": device}]


def test_a_name_that_no_microphone_has_lists_those_there_are(monkeypatch: pytest.MonkeyPatch) -> None:
    _stand_in(monkeypatch, [])
    with pytest.raises(MicrophoneError, match="name one of: Built-in, USB bench mic"), open_microphone("speaker"):
        pass


def test_what_portaudio_complains_of_is_one_line(monkeypatch: pytest.MonkeyPatch) -> None:
    _stand_in(monkeypatch, [])
    with pytest.raises(MicrophoneError, match="Device unavailable"), open_microphone():
        raise _PortAudioError("Device unavailable")


def _stand_in(monkeypatch: pytest.MonkeyPatch, opened: list[Any]) -> None:
    """A module in the place of sounddevice, with two microphones and a loudspeaker."""
    import types

    class Stream:
        def __init__(self, **how: Any) -> None:
            opened.append(how)

        def __enter__(self) -> Stream:
            return self

        def __exit__(self, *_: object) -> None:
            pass

        def read(self, frames: int) -> tuple[bytes, bool]:
            return b"\x00\x00" * frames, False

    devices = json.loads(
        '[{"index": 0, "name": "Built-in", "max_input_channels": 2},'
        ' {"index": 1, "name": "Speaker", "max_input_channels": 0},'
        ' {"index": 2, "name": "USB bench mic", "max_input_channels": 1}]'
    )
    module = types.ModuleType("sounddevice")
    vars(module).update(RawInputStream=Stream, PortAudioError=_PortAudioError, query_devices=lambda: devices)
    monkeypatch.setitem(sys.modules, "sounddevice", module)
