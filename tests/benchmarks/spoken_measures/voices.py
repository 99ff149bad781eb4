"""The voices that speak the corpus: Flite's, espeak-ng's, Piper's and Kokoro's."""

from __future__ import annotations

import shutil
import subprocess
import tempfile
import wave
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np

from demo_sessions.build.voices import Spoken, Voice, VoiceMissingError, open_voice
from tests.benchmarks.spoken_measures.sentences import Side
from tests.benchmarks.spoken_measures.styled import StyledVoice


@dataclass(frozen=True, slots=True)
class Speaker:
    """A voice, and the half of the corpus it speaks."""

    name: str
    side: Side
    pace: float = 1.0
    """More is slower."""
    robot: bool = False
    """True for a formant or diphone voice: nobody at a bench sounds like it."""


SPEAKERS = (
    Speaker("slt", "tuning"),
    Speaker("kal16", "tuning", robot=True),
    Speaker("en-us+m3", "tuning", 1.05, robot=True),
    Speaker("en-gb-scotland+f2", "tuning", robot=True),
    Speaker("jm_kumo, en-us", "tuning"),
    Speaker("jf_alpha, en-gb-x-rp", "tuning"),
    Speaker("rms", "held-out"),
    Speaker("awb", "held-out"),
    Speaker("en-gb-x-rp+f3", "held-out", 1.05, robot=True),
    Speaker("joe", "held-out"),
    # Nothing, not even an earlier round of tuning, ever heard these three.
    Speaker("jf_gongitsune, en-us", "held-out"),
    Speaker("jf_nezumi, en-gb-x-rp", "held-out"),
    Speaker("jf_tebukuro, en-us", "held-out"),
)

_WORDS_A_MINUTE = 150
"""espeak-ng at pace 1; its own 175 is faster than anybody talks at a bench."""


class FormantVoice:
    """One of espeak-ng's voices, run as the `espeak-ng` command; it doesn't tell when its words start."""

    def __init__(self, name: str) -> None:
        found = shutil.which("espeak-ng")
        if found is None:
            raise VoiceMissingError("espeak-ng is not installed; run `apt-get install espeak-ng`")
        self._command = [found, "-v", name]

    def read(self, text: str, pace: float) -> Spoken:
        """The line as sound."""
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "line.wav"
            speed = str(round(_WORDS_A_MINUTE / pace))
            subprocess.run([*self._command, "-s", speed, "-w", str(path), text], check=True, capture_output=True)
            with wave.open(str(path)) as file:
                rate = file.getframerate()
                whole = np.frombuffer(file.readframes(file.getnframes()), np.int16)
        return Spoken(np.asarray(whole / 32768, np.float32), rate, ())


@cache
def voice(name: str) -> Voice:
    """The voice of that name. Raises `VoiceMissingError` where its synthesiser isn't installed."""
    if name.startswith("j") and ", " in name:
        return StyledVoice(*name.split(", "))
    return FormantVoice(name) if name.startswith("en-") else open_voice(name)
