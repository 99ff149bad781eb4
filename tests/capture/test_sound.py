"""The sound comes out as 16 kHz mono, on the film's own time, and nothing that was recorded gets lost."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from faster_whisper import decode_audio

from capture.errors import RecordingError
from capture.sound import RATE, Sound
from tests.capture.making import Maker, Samples, loud_from, run, spoiler

GIGABYTE = 1 << 30


def heard(path: Path) -> Samples:
    samples: Samples = np.concatenate(list(Sound(path).pieces()))
    return samples


@pytest.mark.parametrize(
    "name",
    ["film.mp4", "film.mov", "film.mkv", "film.webm", "a.wav", "a.mp3", "a.m4a", "a.ogg", "a.opus", "a.flac"],
)
def test_every_container_gives_the_same_sound(make: Maker, name: str) -> None:
    speech = make.speech()
    path = make.film(name, "-i", speech) if name.startswith("film") else make.sound(name, speech)
    plain, coded = heard(speech), heard(path)
    assert coded.dtype == np.float32
    assert len(coded) / RATE == pytest.approx(len(plain) / RATE, abs=0.1)
    assert loud_from(coded) == pytest.approx(loud_from(plain), abs=0.1)


def test_a_wav_comes_out_as_the_reference_decoder_has_it(make: Maker) -> None:
    # Reference: faster-whisper's own decode_audio.
    speech = make.speech()
    ours, reference = heard(speech), decode_audio(str(speech), sampling_rate=RATE)
    assert len(ours) == pytest.approx(len(reference), abs=64)
    length = min(len(ours), len(reference))
    assert np.abs(ours[:length] - reference[:length]).max() < 0.01


@pytest.mark.parametrize("name", ["late.mp4", "late.mov", "late.mkv", "late.webm", "late.ts"])
def test_sound_that_starts_late_is_late(make: Maker, name: str) -> None:
    speech = make.speech()
    late = heard(make.film(name, "-itsoffset", "3.5", "-i", speech, "-map", "0:v", "-map", "1:a"))
    first, last = loud_from(heard(speech))
    assert loud_from(late) == pytest.approx((first + 3.5, last + 3.5), abs=0.1)
    assert not late[: 3 * RATE].any()


@pytest.mark.parametrize("name", ["gap.mp4", "gap.mkv"])
def test_a_gap_becomes_silence(make: Maker, name: str) -> None:
    whole = make.sound("whole.m4a", make.speech())
    gap = heard(make.remuxed(name, whole, lambda packet, at: None if 1 <= at < 2.5 else packet))
    assert loud_from(gap) == pytest.approx(loud_from(heard(whole)), abs=0.1)
    assert not gap[int(1.2 * RATE) : int(2.4 * RATE)].any()


def test_damaged_packets_are_skipped_and_warned_of(make: Maker) -> None:
    whole = make.sound("whole.m4a", make.speech())
    sound = Sound(make.remuxed("damaged.mp4", whole, spoiler(1, 2.5)))
    damaged: Samples = np.concatenate(list(sound.pieces()))
    assert loud_from(damaged)[1] == pytest.approx(loud_from(heard(whole))[1], abs=0.1)
    assert sound.warnings
    assert sound.warnings[0].startswith("the sound is damaged at 0:0")


def test_a_mostly_damaged_file_is_no_recording(make: Maker) -> None:
    film = make.film("zeros.mp4", "-i", make.speech(), "-movflags", "+faststart")
    content = film.read_bytes()
    keep = int(len(content) * 0.4)
    spoilt = make.folder / "zeros-behind.mp4"
    spoilt.write_bytes(content[:keep] + bytes(len(content) - keep))
    with pytest.raises(RecordingError, match="most of its sound is damaged"):
        heard(spoilt)


def test_a_dead_channel_does_not_halve_the_voice(make: Maker) -> None:
    voice = heard(make.speech())
    for planes in ([voice, 0 * voice], [0 * voice, voice]):
        mixed = heard(make.samples(np.stack(planes)))
        assert np.abs(mixed).max() == pytest.approx(np.abs(voice).max(), rel=0.05)
        assert np.sqrt((mixed**2).mean()) == pytest.approx(np.sqrt((voice**2).mean()), rel=0.02)


def test_opposite_phase_does_not_cancel(make: Maker) -> None:
    voice = heard(make.speech())
    mixed = heard(make.samples(np.stack([voice, -voice])))
    assert np.sqrt((mixed**2).mean()) == pytest.approx(np.sqrt((voice**2).mean()), rel=0.02)


def test_a_voice_on_the_middle_of_six_channels_is_heard(make: Maker) -> None:
    voice = heard(make.speech())
    planes = np.zeros((6, len(voice)), dtype=np.float32)
    planes[2] = voice
    mixed = heard(make.samples(planes))
    assert np.sqrt((mixed**2).mean()) == pytest.approx(np.sqrt((voice**2).mean()), rel=0.05)


def test_decoding_four_hours_stays_small(make: Maker) -> None:
    quarter = make.folder / "quarter.m4a"
    run(
        "ffmpeg", "-v", "error", "-y", "-f", "lavfi", "-i", "anoisesrc=d=900:a=0.001:r=8000",
        "-c:a", "aac", "-b:a", "8k", quarter,
    )  # fmt: skip
    four = make.folder / "four-hours.m4a"
    run("ffmpeg", "-v", "error", "-y", "-stream_loop", "15", "-i", quarter, "-c", "copy", four)
    counted = subprocess.run(
        [sys.executable, "-c", COUNT, str(four)], capture_output=True, text=True, check=True, timeout=300
    )
    seconds, peak = counted.stdout.split()
    assert float(seconds) == pytest.approx(4 * 3600, abs=5)
    assert int(peak) < 1.5 * GIGABYTE


COUNT = """
import re, sys
from pathlib import Path
from capture.sound import RATE, Sound
samples = sum(len(piece) for piece in Sound(Path(sys.argv[1])).pieces())
peak = int(re.search(r"VmHWM:\\s+(\\d+) kB", Path("/proc/self/status").read_text()).group(1)) * 1024
print(samples / RATE, peak)
"""
