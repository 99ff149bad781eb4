"""`python -m demo_sessions.build`: what it says when something is missing, and that nothing is lost then."""

from __future__ import annotations

from pathlib import Path

import av
import numpy as np
import pytest
from PIL import Image

from demo_sessions.build import __main__ as command
from demo_sessions.build.encode import write_film, write_sound
from demo_sessions.build.sound import RATE
from demo_sessions.build.voices import Voice, VoiceMissingError, open_voice
from demo_sessions.truth import folder


def test_names_the_sessions_when_one_is_unknown(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as left:
        command.main(["rocking-horse"])
    assert left.value.code == 2
    assert "no demo session is called 'rocking-horse'; there are old-bustard-bridge" in capsys.readouterr().err


def test_a_missing_voice_is_one_line_and_nothing_is_lost(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def missing(name: str) -> Voice:
        raise VoiceMissingError(f"{name} is not installed; install it and build again")

    before = (folder("seized-pedal") / "truth.json").read_bytes()
    monkeypatch.setattr(command, "open_voice", missing)
    assert command.main(["seized-pedal"]) == 2
    assert capsys.readouterr().err == "rms is not installed; install it and build again\n"
    assert (folder("seized-pedal") / "truth.json").read_bytes() == before


def test_says_how_to_get_flite(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", "")
    with pytest.raises(VoiceMissingError, match="apt-get install flite"):
        open_voice("rms")


def tone(seconds: float) -> np.ndarray[tuple[int, ...], np.dtype[np.float32]]:
    return np.asarray(0.3 * np.sin(2 * np.pi * 440 * np.arange(round(seconds * RATE)) / RATE), np.float32)


def test_sound_files_are_the_same_each_time(tmp_path: Path) -> None:
    for name in ("one.m4a", "two.m4a"):
        write_sound(tmp_path / name, tone(1.5))
    assert (tmp_path / "one.m4a").read_bytes() == (tmp_path / "two.m4a").read_bytes()


def test_a_film_holds_its_pictures_and_its_sound(tmp_path: Path) -> None:
    frames = [Image.new("RGB", (64, 48), (shade, 90, 160)) for shade in range(0, 240, 15)]
    write_film(tmp_path / "film.mp4", frames, 8, tone(2))
    with av.open(str(tmp_path / "film.mp4")) as film:
        shades = [float(frame.to_ndarray(format="rgb24")[:, :, 0].mean()) for frame in film.decode(video=0)]
    assert shades == pytest.approx(list(range(0, 240, 15)), abs=8)
    with av.open(str(tmp_path / "film.mp4")) as film:
        heard = np.concatenate([frame.to_ndarray()[0] for frame in film.decode(audio=0)])
    assert len(heard) / RATE == pytest.approx(2, abs=0.1)
    assert float(np.sqrt(np.mean(heard**2))) == pytest.approx(0.3 / 2**0.5, rel=0.05)
