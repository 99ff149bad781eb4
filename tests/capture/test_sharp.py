"""The sharpest frame near a step is chosen by measure: not what is blurred, nor black, nor far."""

from __future__ import annotations

import io
import os
import shutil
import tracemalloc
from pathlib import Path

import av
import numpy as np
import numpy.typing as npt
import pytest
from PIL import Image, ImageFilter

from capture.errors import RecordingError
from capture.sharp import sharpest, sharpness
from capture.step_stills import make_step_stills, step_stills, tenths_of
from tests.capture.making import Maker

Shades = npt.NDArray[np.uint8]
RATE, SIDE = 10, (320, 180)


def pattern(seed: int, blur: float = 0.0, mark: int = 0) -> Shades:
    """Boards of many shades, out of focus by so many pixels; `mark` is the shade of the left upper corner."""
    random = np.random.default_rng(seed)
    coarse = random.integers(40, 220, (18, 32), dtype=np.uint8)
    picture = Image.fromarray(np.kron(coarse, np.ones((10, 10), dtype=np.uint8)))
    shades = np.array(picture.filter(ImageFilter.GaussianBlur(blur)) if blur else picture)
    shades[:40, :40] = mark
    return np.stack([shades] * 3, axis=-1)


def film(path: Path, frames: list[Shades], gop: int = 10) -> Path:
    with av.open(str(path), "w") as container:
        stream = container.add_stream("libx264", rate=RATE, options={"crf": "12", "g": str(gop)})
        stream.width, stream.height, stream.pix_fmt = *SIDE, "yuv420p"
        for shades in frames:
            container.mux(stream.encode(av.VideoFrame.from_ndarray(shades, format="rgb24")))
        container.mux(stream.encode(None))
    return path


def corner(jpeg: bytes | None) -> float:
    assert jpeg is not None
    return float(np.asarray(Image.open(io.BytesIO(jpeg)).convert("L"))[8:32, 8:32].mean())


def test_the_one_frame_in_focus_is_taken(tmp_path: Path) -> None:
    frames = [pattern(1, blur=4, mark=100) for _ in range(60)]
    frames[23] = pattern(1, mark=200)
    made = sharpest(film(tmp_path / "focus.mp4", frames), 1.0)
    assert corner(made) == pytest.approx(200, abs=6)


def test_what_is_sharper_but_far_is_left_alone(tmp_path: Path) -> None:
    frames = [pattern(1, blur=4, mark=100) for _ in range(120)]
    frames[15], frames[90] = pattern(1, blur=1, mark=150), pattern(1, mark=200)
    assert corner(sharpest(film(tmp_path / "far.mp4", frames), 1.0)) == pytest.approx(150, abs=6)


def test_black_is_never_taken(tmp_path: Path) -> None:
    black = np.zeros((SIDE[1], SIDE[0], 3), dtype=np.uint8)
    frames = [black.copy() for _ in range(50)]
    assert sharpest(film(tmp_path / "black.mp4", frames), 1.0) is None
    frames[12] = pattern(2, blur=5, mark=120)
    assert corner(sharpest(film(tmp_path / "one.mp4", frames), 1.0)) == pytest.approx(120, abs=8)


def test_moved_while_it_was_taken_it_is_less_sharp() -> None:
    still = pattern(3)[:, :, 0]
    moved = np.mean([np.roll(still, by, axis=1) for by in range(12)], axis=0).astype(np.uint8)
    assert sharpness(moved) < sharpness(still) / 2


def test_the_measure_is_the_variance_of_the_laplacian() -> None:
    """Held against the definition, worked out one pixel at a time: 4 neighbours less four times the middle."""
    grey = np.random.default_rng(4).integers(0, 255, (9, 11), dtype=np.uint8)
    wide = grey.astype(int)
    each = [
        wide[y - 1, x] + wide[y + 1, x] + wide[y, x - 1] + wide[y, x + 1] - 4 * wide[y, x]
        for y in range(1, 8)
        for x in range(1, 10)
    ]
    assert sharpness(grey) == pytest.approx(np.var(each))
    assert sharpness(np.full((5, 5), 90, dtype=np.uint8)) == 0


def test_sound_has_no_still_and_what_is_no_film_is_told(tmp_path: Path) -> None:
    assert sharpest(Maker(tmp_path).speech(), 1) is None
    with pytest.raises(RecordingError, match="no such file"):
        sharpest(tmp_path / "gone.mp4", 1)


def test_a_long_film_with_one_key_frame_takes_little_memory(tmp_path: Path) -> None:
    frames = [pattern(1, mark=100)] * 1200
    long = film(tmp_path / "long.mp4", frames, gop=2000)
    tracemalloc.start()
    made = sharpest(long, 110.0)
    _, most = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert made is not None
    assert most < 20_000_000


def test_stills_are_kept_made_once_and_the_same_again(tmp_path: Path) -> None:
    made = film(tmp_path / "steps.mp4", [pattern(1, mark=100) for _ in range(60)])
    assert make_step_stills(tmp_path, made, [1.0, 2.04, 2.04]) == 2
    first = {name: path.read_bytes() for name, path in step_stills(tmp_path, made).items()}
    assert set(first) == {10, 20}
    assert make_step_stills(tmp_path, made, [1.0, 2.0]) == 0
    for path in step_stills(tmp_path, made).values():
        path.unlink()
    make_step_stills(tmp_path, made, [1.0, 2.0])
    assert {name: path.read_bytes() for name, path in step_stills(tmp_path, made).items()} == first


def test_another_film_has_other_stills(tmp_path: Path) -> None:
    made = film(tmp_path / "cut.mp4", [pattern(1, mark=100) for _ in range(30)])
    make_step_stills(tmp_path, made, [1.0])
    film(made, [pattern(1, mark=100) for _ in range(20)])
    assert step_stills(tmp_path, made) == {}
    assert tenths_of(-1.0) == 0


def test_a_copied_folder_keeps_its_stills_and_those_of_an_older_program(tmp_path: Path) -> None:
    home, copy = tmp_path / "one", tmp_path / "other"
    home.mkdir()
    made = film(home / "steps.mp4", [pattern(1, mark=100) for _ in range(30)])
    make_step_stills(home, made, [1.0])
    facts = made.stat()
    older = home / "stills" / f"step-{20:07}-{facts.st_size:x}-{facts.st_mtime_ns:x}.jpg"
    older.write_bytes(b"as it was named")
    assert set(step_stills(home, made)) == {10, 20}
    shutil.copytree(home, copy, copy_function=shutil.copyfile)
    os.utime(copy / "steps.mp4", (1_000_000_000, 1_000_000_000))
    assert set(step_stills(copy, copy / "steps.mp4")) == {10}
