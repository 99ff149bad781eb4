"""The lines as sound: Kokoro's voices in several kinds of English, Flite's slt and kal16, and many of espeak-ng's.

Voices that a benchmark hears are never among them.
"""

from __future__ import annotations

import json
from pathlib import Path
from random import Random

import numpy as np

from demo_sessions.build.voices import Spoken, Voice
from tests.benchmarks.spoken_measures.sound import resampled, write_sound
from tests.benchmarks.spoken_measures.styled import StyledVoice
from tests.benchmarks.spoken_measures.voices import SPEAKERS, voice
from tests.benchmarks.teach_ear.lines import lines

KEPT_APART = {"af_heart", "am_michael", "am_onyx", "bf_emma", "bm_george", "bm_lewis"} | {
    one.name.split(",")[0] for one in SPEAKERS if one.side == "held-out"
}
"""Voices that no line is spoken in, so that something is left to judge by."""

AMERICAN = ("en-us", "en-us", "en-us", "en-us-nyc")
BRITISH = ("en-gb-x-rp", "en-gb-x-rp", "en-gb-scotland", "en-gb-x-gbclan", "en-gb-x-gbcwmd")
MANNERS = ("m1", "m2", "m3", "m4", "m5", "m6", "m7", "f1", "f2", "f4", "f5")
PERSONS = 0.77
"""Share of lines in voices like a person's."""

RATE_OF_STYLES = 256
"""Numbers in one of Kokoro's styles."""


def speak(voices: Path, folder: Path, count: int, seed: int) -> None:
    """Write `count` lines as sound into `folder`, with `lines.json`: file, voice and what the ear should write.

    `voices` holds Kokoro's styles as the npm package kokoro-js brings them (`NAME.bin`, Apache 2.0).
    """
    random = Random(seed)  # noqa: S311 (nothing secret is drawn)
    styles = sorted(path for path in voices.glob("*.bin") if path.stem not in KEPT_APART)
    told: list[dict[str, str]] = []
    for number, line in enumerate(lines(count, seed)):
        name, speaker = _drawn(random, styles)
        path = folder / f"{number:05d}.wav"
        if not path.exists():
            write_sound(path, _levelled(speaker.read(line.spoken, random.uniform(0.82, 1.25))))
        told.append({"file": path.name, "voice": name, "written": line.written})
        (folder / "lines.json").write_text(json.dumps(told), "utf-8")


def _drawn(random: Random, styles: list[Path]) -> tuple[str, Voice]:
    if random.random() > PERSONS:
        accent = random.choice([*AMERICAN, *BRITISH, "en-029"])
        name = random.choice(["slt", "kal16", *[f"{accent}+{random.choice(MANNERS)}"] * 3])
        return name, voice(name)
    style = random.choice(styles)
    english = random.choice(BRITISH if style.stem.startswith("b") else AMERICAN)
    numbers = np.fromfile(style, np.float32).reshape(-1, RATE_OF_STYLES)
    return style.stem, StyledVoice.of(numbers, english)


def _levelled(spoken: Spoken) -> np.ndarray[tuple[int], np.dtype[np.float32]]:
    samples = resampled(spoken)
    return np.asarray(samples * (0.9 / max(float(np.abs(samples).max()), 1e-4)), np.float32)
