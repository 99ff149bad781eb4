"""Stills are what a player shows: at the second, upright, with square pixels. FFmpeg's own frames are the measure."""

from __future__ import annotations

import io
from pathlib import Path

import numpy as np
import numpy.typing as npt
import pytest
from PIL import Image

from capture.errors import RecordingError
from capture.still import STILL_WIDTH, still
from tests.capture.making import Maker, run


def test_a_phone_held_upright_gives_an_upright_still(tmp_path: Path) -> None:
    flat = _film(tmp_path, "flat.mp4")
    for degrees in (90, 180, 270):
        turned, shown = tmp_path / f"{degrees}.mp4", tmp_path / f"{degrees}.png"
        run("ffmpeg", "-v", "error", "-i", flat, "-c", "copy", "-metadata:s:v", f"rotate={degrees}", turned)
        run("ffmpeg", "-v", "error", "-i", turned, "-frames:v", "1", shown)
        assert _apart(_still(turned, 0), np.asarray(Image.open(shown).convert("RGB"), dtype=np.uint8)) < 10


def test_pixels_that_are_not_square_are_made_so(tmp_path: Path) -> None:
    wide = _film(tmp_path, "wide.mp4", "-vf", "setsar=2")
    assert _still(wide, 0).shape == (180, 640, 3)


def test_a_large_picture_is_made_small(tmp_path: Path) -> None:
    large = _film(tmp_path, "large.mp4", size="1920x1080")
    assert _still(large, 0).shape == (360, STILL_WIDTH, 3)


@pytest.mark.parametrize("second", [0.0, 0.5, 1.0, 1.96])
def test_the_frame_is_the_one_that_a_player_shows(tmp_path: Path, second: float) -> None:
    film = _film(tmp_path, "count.mp4", "-g", "50")
    shown = tmp_path / "shown.png"
    run("ffmpeg", "-v", "error", "-i", film, "-vf", f"select=eq(n\\,{int(second * 25)})", "-frames:v", "1", shown)
    assert _apart(_still(film, second), np.asarray(Image.open(shown).convert("RGB"), dtype=np.uint8)) < 10


def test_sound_has_no_picture(tmp_path: Path) -> None:
    assert still(Maker(tmp_path).speech(), 1) is None


def test_what_is_no_film_is_told(tmp_path: Path) -> None:
    with pytest.raises(RecordingError, match="no such file"):
        still(tmp_path / "gone.mp4", 1)


def _film(folder: Path, name: str, *more: str, size: str = "320x180") -> Path:
    source = ("-f", "lavfi", "-i", f"testsrc=s={size}:d=2:r=25")
    run("ffmpeg", "-v", "error", *source, *more, "-c:v", "libx264", "-pix_fmt", "yuv420p", folder / name)
    return folder / name


def _still(film: Path, second: float) -> npt.NDArray[np.uint8]:
    made = still(film, second)
    assert made is not None
    return np.asarray(Image.open(io.BytesIO(made)).convert("RGB"), dtype=np.uint8)


def _apart(one: npt.NDArray[np.uint8], other: npt.NDArray[np.uint8]) -> float:
    """Mean difference in shades of 255."""
    assert one.shape == other.shape
    return float(np.abs(one.astype(int) - other.astype(int)).mean())
