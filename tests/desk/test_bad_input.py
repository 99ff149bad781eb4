"""Bad input gets one clear line and exit code 2, and leaves the shop as it was."""

from __future__ import annotations

import subprocess
import sys
from importlib.resources import as_file, files
from pathlib import Path

import av
import numpy as np
import pytest

from capture.shop import Shop

DEMO_FILM = next(path for path in files("demo_sessions").iterdir() if path.is_dir() and (path / "film.mp4").is_file())


def run(*words: str | Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run([sys.executable, "-m", "desk", *map(str, words)], capture_output=True, text=True, timeout=120)


def one_line(run: subprocess.CompletedProcess[str]) -> str:
    """What a failed command said; checks that it was one line, without a traceback, and nothing on standard output."""
    assert run.returncode == 2, run.stderr
    assert run.stdout == ""
    lines = [line for line in run.stderr.splitlines() if line.strip()]
    assert len(lines) == 1, run.stderr
    return lines[0]


def everything_in(folder: Path) -> dict[str, bytes]:
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def text_renamed(folder: Path) -> Path:
    path = folder / "film.mp4"
    path.write_text("Set the action at five sixty-fourths.\n" * 50)
    return path


def cut_short(folder: Path) -> Path:
    path = folder / "film.mp4"
    with as_file(DEMO_FILM / "film.mp4") as whole:
        content = whole.read_bytes()
    path.write_bytes(content[: len(content) // 2])
    return path


def without_sound(folder: Path) -> Path:
    path = folder / "film.mp4"
    with av.open(str(path), "w") as container:
        stream = container.add_stream("libx264", rate=5)
        stream.width, stream.height, stream.pix_fmt = 64, 64, "yuv420p"
        for _ in range(10):
            picture = av.VideoFrame.from_ndarray(np.zeros((64, 64, 3), np.uint8), format="rgb24")
            container.mux(stream.encode(picture))
        container.mux(stream.encode())
    return path


def empty(folder: Path) -> Path:
    path = folder / "film.mp4"
    path.touch()
    return path


def missing(folder: Path) -> Path:
    return folder / "film.mp4"


def a_folder(folder: Path) -> Path:
    path = folder / "film.mp4"
    path.mkdir()
    return path


BAD = {
    text_renamed: "film.mp4",
    cut_short: "film.mp4",
    without_sound: "no sound",
    empty: "empty",
    missing: "no such file",
    a_folder: "folder",
}


@pytest.mark.parametrize("make", BAD, ids=lambda make: make.__name__)
def test_a_recording_that_is_none_leaves_the_shop_as_it_was(make: object, tmp_path: Path) -> None:
    assert callable(make)
    shop = Shop.open_or_create(tmp_path / "shop")
    before = everything_in(shop.root)
    said = one_line(run("writeup", make(tmp_path), "--shop", shop.root))
    assert BAD[make] in said
    assert everything_in(shop.root) == before
    assert sorted(path.name for path in (shop.root / "sessions").iterdir()) == []


def test_a_recording_that_is_none_makes_no_shop(tmp_path: Path) -> None:
    one_line(run("writeup", empty(tmp_path), "--shop", tmp_path / "shop"))
    assert not (tmp_path / "shop").exists()


@pytest.mark.parametrize(
    ("name", "content", "problem"),
    [
        ("said.vtt", b"", "empty"),
        ("said.vtt", b"WEBVTT\n\n", "no captions"),
        ("said.srt", b"\xff\xfe\x00\x01\x02" * 40, "said.srt"),
        ("said.json", b'{"schema": "spokeshave-transcript/99"}', "said.json"),
        ("said.json", b"{", "said.json"),
        ("said.txt", b"just some words", "said.txt"),
    ],
)
def test_a_narration_that_is_none(name: str, content: bytes, problem: str, tmp_path: Path) -> None:
    path = tmp_path / name
    path.write_bytes(content)
    assert problem in one_line(run("extract", path, "--json"))


def test_a_narration_that_is_not_there(tmp_path: Path) -> None:
    assert "no such file" in one_line(run("extract", tmp_path / "said.vtt", "--json"))


def test_an_unknown_trade_lists_those_there_are(tmp_path: Path) -> None:
    path = tmp_path / "said.vtt"
    path.write_text("WEBVTT\n\n00:00:01.000 --> 00:00:03.000\nThe slot is 1/8 inch.\n")
    said = one_line(run("extract", path, "--trade", "falconry"))
    assert "falconry" in said
    assert "strings" in said


def test_publishing_needs_a_shop(tmp_path: Path) -> None:
    assert "is no shop" in one_line(run("publish", "--shop", tmp_path / "nowhere"))


def test_a_model_that_is_not_there(tmp_path: Path) -> None:
    with as_file(DEMO_FILM / "film.mp4") as film:
        said = one_line(run("writeup", film, "--shop", tmp_path / "shop", "--model", tmp_path / "no-model"))
    assert "no-model" in said
    assert not (tmp_path / "shop").exists()
