"""Sound and films for the tests, made with flite, ffmpeg and PyAV."""

from __future__ import annotations

import hashlib
import random
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import TypeAlias, cast

import av
import numpy as np
import numpy.typing as npt
import pytest

Samples = npt.NDArray[np.float32]
AudioPacket: TypeAlias = "av.Packet[av.AudioStream]"

SLOT = "The slot is eleven sixty fourths wide. Take it slowly with a sharp chisel."
"""What most tests have spoken: about four seconds."""


def run(*command: str | Path) -> None:
    """Run a program; fail the test with a clear line where it is missing, or with what it says where it fails."""
    if shutil.which(str(command[0])) is None:
        pytest.fail(f"{command[0]} is missing: these tests need it (Debian: apt install {command[0]})")
    done = subprocess.run([str(part) for part in command], capture_output=True, text=True, check=False)
    if done.returncode:
        pytest.fail(f"{command[0]} failed: {done.stderr.strip()[-500:]}")


class Maker:
    """Makes each file once and keeps it for the whole test run."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def speech(self, text: str = SLOT, *, voice: str = "slt") -> Path:
        """A WAV in which a voice of flite says `text`."""
        path = self._path("speech", text + voice, ".wav")
        if not path.exists():
            run("flite", "-voice", voice, "-t", text, "-o", path)
        return path

    def samples(self, samples: Samples, rate: int = 16_000) -> Path:
        """A 16-bit WAV of samples, shape (samples,) or (channels, samples)."""
        planes = samples if samples.ndim == 2 else samples[None, :]
        whole = (planes * 32767).clip(-32768, 32767).astype(np.int16)
        path = self._path("samples", hashlib.sha256(whole.tobytes()).hexdigest() + str(rate), ".wav")
        if not path.exists():
            layout = {1: "mono", 2: "stereo", 6: "5.1"}[len(whole)]
            with av.open(str(path), "w") as container:
                stream = container.add_stream("pcm_s16le", rate=rate, layout=layout)
                frame = av.AudioFrame.from_ndarray(
                    np.ascontiguousarray(whole.T.reshape(1, -1)), format="s16", layout=layout
                )
                frame.sample_rate = rate
                container.mux(stream.encode(frame))
                container.mux(stream.encode(None))
        return path

    def film(self, name: str, *arguments: str | Path, seconds: float = 6) -> Path:
        """A small grey film with what `arguments` add, encoded by ffmpeg as the name's ending asks."""
        path = self._path("film", repr(arguments) + str(seconds), "-" + name)
        if not path.exists():
            video = "libvpx" if name.endswith("webm") else "libx264"
            picture = ("-f", "lavfi", "-i", f"color=c=gray:s=64x64:r=10:d={seconds}")
            run(
                "ffmpeg", "-v", "error", "-y", *picture, *arguments,
                "-c:v", video, "-pix_fmt", "yuv420p", "-threads", "1", path,
            )  # fmt: skip
        return path

    def sound(self, name: str, source: Path, *arguments: str) -> Path:
        """`source` encoded by ffmpeg as the name's ending asks."""
        path = self._path("sound", repr(arguments) + str(source), "-" + name)
        if not path.exists():
            run("ffmpeg", "-v", "error", "-y", "-i", source, *arguments, path)
        return path

    def remuxed(self, name: str, source: Path, change: Callable[[AudioPacket, float], AudioPacket | None]) -> Path:
        """`source` packet by packet through `change`, which is told each one's second; null leaves it out."""
        path = self._path("remuxed", str(source), "-" + name)
        with av.open(str(source)) as before, av.open(str(path), "w") as after:
            track = before.streams.audio[0]
            copy = after.add_stream_from_template(track)
            for packet in before.demux(track):
                if packet.dts is None or packet.pts is None:
                    continue
                changed = change(packet, float(packet.pts * packet.time_base))
                if changed is not None:
                    changed.stream = copy
                    after.mux(changed)
        return path

    def cut(self, source: Path, share: float) -> Path:
        """The first part of a file's bytes."""
        path = self._path("cut", str(source) + str(share), "-" + source.name)
        content = source.read_bytes()
        path.write_bytes(content[: int(len(content) * share)])
        return path

    def _path(self, kind: str, key: str, ending: str) -> Path:
        return self.folder / f"{kind}-{hashlib.sha256(key.encode()).hexdigest()[:12]}{ending}"


def loud_from(samples: Samples, level: float = 0.02) -> tuple[float, float]:
    """Seconds at which the first and last sample louder than `level` stand."""
    loud = np.flatnonzero(np.abs(samples) > level)
    assert len(loud), "all is silent"
    return loud[0] / 16_000, loud[-1] / 16_000


def spoiler(first: float, last: float) -> Callable[[AudioPacket, float], AudioPacket]:
    """What puts noise in the place of the packets between two seconds; the same noise each time."""
    noise = random.Random(1)  # noqa: S311

    def spoil(packet: AudioPacket, at: float) -> AudioPacket:
        if not first <= at < last:
            return packet
        spoilt = cast(AudioPacket, av.Packet(noise.randbytes(packet.size)))
        spoilt.pts, spoilt.dts, spoilt.time_base = packet.pts, packet.dts, packet.time_base
        spoilt.duration = packet.duration
        return spoilt

    return spoil
