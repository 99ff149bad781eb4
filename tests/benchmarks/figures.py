"""How many spoken measures come out right, with the prime and without.

    python -m tests.benchmarks.figures

Thirty sentences with measures, each said by five synthetic voices (flite and espeak-ng). A measure is right where its
numbers come out in order and apart ("11 64ths", "11/64" and "eleven sixty-fourths" are right, "1164" is wrong).
"""

from __future__ import annotations

import itertools
import random
import subprocess
import tempfile
import wave
from dataclasses import dataclass
from pathlib import Path

from capture.figures import numbers_said
from tests.benchmarks.hearers import hear_apart

VOICES = ("awb", "rms", "slt", "kal16", "espeak")
NAMES = {"unprimed": "without the prime", "ours": "with the prime", "plain": "faster-whisper, plain"}
PAUSES = (0.4, 0.6, 1.0, 2.5)
NUMBERS = (
    "two", "three", "four", "five", "six", "seven", "nine", "eleven", "thirteen", "fifteen", "seventeen", "nineteen",
)  # fmt: skip
MEASURES = (
    "{} sixteenths", "{} sixty-fourths", "{} thirty-seconds", "{} and {} eighths", "{} thousandths",
    "{} point {} millimetres", "{} and three sixteenths", "thirty {} newton metres", "{} thou",
)  # fmt: skip
SENTENCES = (
    "The string height at the twelfth fret is {}.",
    "I took the saddle down by {} on the bass side.",
    "So the gap was {} before I touched it.",
    "Leave {} for the glue to squeeze out.",
    "I measured the pivot and it came out at {}.",
    "Set the fence {} from the blade.",
    "The spindle wants to be {} at the shoulder.",
    "You can see the crack runs about {} up from the end.",
    "The bearing had {} of play, which is too much.",
    "And the hole at the far end, that is {}.",
)


@dataclass(frozen=True, slots=True)
class Said:
    """One sentence in a recording."""

    measure: str
    start: float
    end: float


def main() -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder:
        spoken = [_speak(voice, Path(folder)) for voice in VOICES]
        total = sum(len(said) for _, said in spoken)
        print(f"{total} measures, {len(VOICES)} voices: " + ", ".join(VOICES))
        for hearer, name in NAMES.items():
            runs = hear_apart(hearer, [path for path, _ in spoken])
            right = [sum(_right(each, run.words) for each in said) for (_, said), run in zip(spoken, runs, strict=True)]
            print(f"  {name:24}{sum(right):>4} right ({sum(right) / total:.0%})  a voice: {right}")


def _speak(voice: str, folder: Path) -> tuple[Path, list[Said]]:
    """A recording of all sentences by one voice, 16 kHz mono."""
    draw = random.Random(7)  # noqa: S311 - the same sentences each time
    path, said, at = folder / f"{voice}.wav", [], 0.0
    with wave.open(str(path), "wb") as out:
        out.setparams((1, 2, 16_000, 0, "NONE", ""))
        for number, sentence in enumerate(itertools.islice(itertools.cycle(SENTENCES), 30)):
            measure = MEASURES[number % len(MEASURES)].format(draw.choice(NUMBERS), draw.choice(NUMBERS[:5]))
            sound = _sound(voice, sentence.format(measure), folder)
            pause = draw.choice(PAUSES)
            said.append(Said(measure, at, at + len(sound) / 32_000))
            out.writeframes(sound + bytes(2 * int(pause * 16_000)))
            at += len(sound) / 32_000 + int(pause * 16_000) / 16_000
    return path, said


def _sound(voice: str, text: str, folder: Path) -> bytes:
    spoken, even = folder / "spoken.wav", folder / "even.wav"
    flite = ["flite", "-voice", voice, "-t", text, "-o", str(spoken)]
    espeak = ["espeak-ng", "-v", "en-gb", "-s", "150", "-w", str(spoken), text]
    subprocess.run(espeak if voice == "espeak" else flite, check=True)
    subprocess.run(["ffmpeg", "-v", "error", "-y", "-i", spoken, "-ar", "16000", "-ac", "1", even], check=True)
    with wave.open(str(even)) as file:
        return bytes(file.readframes(file.getnframes()))


def _right(said: Said, words: list[tuple[str, float, float]]) -> bool:
    within = [word for word, start, end in words if said.start - 0.3 <= (start + end) / 2 <= said.end + 0.3]
    heard, wanted = numbers_said(" ".join(within)), numbers_said(said.measure)
    return any(heard[at : at + len(wanted)] == wanted for at in range(len(heard)))


if __name__ == "__main__":
    main()
