"""Recordings as a browser gives them: WebM written as it goes, without a length or an index."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from capture.recording import Kind, kind_of

SECONDS = 12


@pytest.fixture(scope="session")
def live_film(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """Twelve seconds of a moving picture (VP8) and a tone (Opus), down a pipe, so that nothing is filled in later."""
    picture = ("-f", "lavfi", "-i", f"testsrc=s=160x120:r=10:d={SECONDS}")
    return _live(*picture, *_tone(), "-c:v", "libvpx", "-g", "20", "-c:a", "libopus", "-shortest")


@pytest.fixture(scope="session")
def live_sound() -> bytes:
    """Twelve seconds of a tone (Opus), in the same way."""
    return _live(*_tone(), "-c:a", "libopus")


@pytest.fixture
def film() -> Kind:
    return known("video/webm")


@pytest.fixture
def sound() -> Kind:
    return known("audio/webm")


def known(mime: str) -> Kind:
    kind = kind_of(mime)
    assert kind is not None
    return kind


def _tone() -> tuple[str, ...]:
    return ("-f", "lavfi", "-i", f"sine=frequency=440:duration={SECONDS}:sample_rate=48000")


def _live(*arguments: str) -> bytes:
    command = ["ffmpeg", "-v", "error", *arguments, "-f", "webm", "-live", "1", "-cluster_time_limit", "500", "pipe:1"]
    return subprocess.run(command, capture_output=True, check=True).stdout


def packets(path: Path) -> list[str]:
    """Every packet of a file as ffmpeg's own `framehash` muxer tells it: track, time, sum of its content."""
    command = ["ffmpeg", "-v", "error", "-i", str(path), "-c", "copy", "-f", "framehash", "-hash", "sha256", "pipe:1"]
    told = subprocess.run(command, capture_output=True, text=True, check=True).stdout
    rows = [line.split(",") for line in told.splitlines() if line and not line.startswith("#")]
    # Track, time stamp, size and sum; how long a packet lasts is worked out by the reader, not written in it.
    return sorted(f"{row[0].strip()} {int(row[2]):7} {row[4].strip()} {row[5].strip()}" for row in rows)
