"""Word error rate, speed, memory and word times on read speech, beside plain faster-whisper.

    python -m tests.benchmarks.wer [--minutes N] [--only ours]

hears five clips of read speech one by one, and the same looped to N minutes (10 by default), over the borders of
blocks. `--minutes 240 --only ours` is a four-hour recording. "clock" and "cpu" are seconds a second of sound; the clock
is honest on an idle machine only, "cpu" counts all cores.
"""

from __future__ import annotations

import argparse
import tempfile
import wave
from difflib import SequenceMatcher
from pathlib import Path
from statistics import mean

import jiwer

from tests.benchmarks.hearers import Run, hear_apart
from tests.benchmarks.read_speech import SOURCE, Clip, clips

NORMALISER = jiwer.Compose(
    [
        jiwer.ToLowerCase(),
        jiwer.SubstituteRegexes({r"-": " ", r"[^\w\s']": "", r"\bmr\b": "mister"}),
        jiwer.RemoveMultipleSpaces(),
        jiwer.Strip(),
        jiwer.ReduceToListOfListOfWords(),
    ]
)
NORMALISER_NAME = "jiwer: lower case, no punctuation, hyphens as spaces, 'Mr' as 'mister'"
HEARERS = {"ours": "Spokeshave", "unprimed": "Spokeshave, no prime", "plain": "faster-whisper, plain"}
PAUSE = 1.0
"""Seconds of silence between clips in the looped recording."""


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description="Measure hearing on read speech.")
    parser.add_argument("--minutes", type=float, default=10.0, help="length of the looped recording")
    parser.add_argument("--only", choices=HEARERS, help="one hearer instead of all")
    chosen = parser.parse_args()
    minutes: float = chosen.minutes
    hearers = [chosen.only] if chosen.only else list(HEARERS)
    spoken = clips()
    print(f"Source: {SOURCE}\nNormaliser: {NORMALISER_NAME}\n")
    with tempfile.TemporaryDirectory() as folder:
        looped, times = loop(spoken, minutes * 60, Path(folder) / "looped.wav")
        _table("The five clips, one by one", spoken, [clip.path for clip in spoken], hearers)
        _table(f"The same looped to {minutes:g} minutes", spoken * times, [looped], hearers)


def _table(title: str, spoken: list[Clip], paths: list[Path], hearers: list[str]) -> None:
    length = sum(_seconds(path) for path in paths)
    print(f"{title} ({length:.0f} s)")
    print(f"  {'':24}{'WER':>8}{'clock':>8}{'cpu':>8}{'peak':>9}{'start error':>13}")
    taken: dict[str, float] = {}
    for hearer in hearers:
        runs = hear_apart(hearer, paths)
        taken[hearer] = sum(run.seconds for run in runs)
        wer = word_error_rate(" ".join(clip.text for clip in spoken), " ".join(run.text for run in runs))
        print(
            f"  {HEARERS[hearer]:24}{wer:>8.2%}{taken[hearer] / length:>8.3f}"
            f"{sum(run.cpu_seconds for run in runs) / length:>8.3f}"
            f"{max(run.peak_megabytes for run in runs):>6.0f} MB{_start_error(spoken, runs):>11.3f} s"
        )
    if {"ours", "plain"} <= taken.keys():
        print(f"  Spokeshave takes {taken['ours'] / taken['plain']:.2f} of the time of plain faster-whisper")
    print()


def word_error_rate(reference: str, heard: str) -> float:
    """Share of words put wrong, left out or made up."""
    return float(jiwer.wer(reference, heard, reference_transform=NORMALISER, hypothesis_transform=NORMALISER))


def _start_error(spoken: list[Clip], runs: list[Run]) -> float:
    """Mean distance of word starts from those that pocketsphinx found by forced alignment, in seconds."""
    reference: list[tuple[str, float]] = []
    heard: list[tuple[str, float]] = []
    shift = 0.0
    for number, clip in enumerate(spoken):
        reference += [(word, start + shift) for word, start, _ in clip.words]
        if len(runs) > 1:
            heard += [(_bare(word), start + shift) for word, start, _ in runs[number].words]
        shift += _seconds(clip.path) + PAUSE
    if len(runs) == 1:
        heard = [(_bare(word), start) for word, start, _ in runs[0].words]
    blocks = SequenceMatcher(
        None, [word for word, _ in reference], [word for word, _ in heard], autojunk=False
    ).get_matching_blocks()
    return mean(
        abs(reference[block.a + at][1] - heard[block.b + at][1]) for block in blocks for at in range(block.size)
    )


def _bare(word: str) -> str:
    return "".join(letter for letter in word.casefold() if letter.isalpha())


def loop(spoken: list[Clip], seconds: float, path: Path) -> tuple[Path, int]:
    """The clips with pauses, over and over, as one recording of about `seconds`; and how often they come in it."""
    times = max(round(seconds / sum(_seconds(clip.path) + PAUSE for clip in spoken)), 1)
    with wave.open(str(path), "wb") as out:
        for number in range(times):
            for clip in spoken:
                with wave.open(str(clip.path)) as clip_file:
                    if number == 0 and clip is spoken[0]:
                        out.setparams(clip_file.getparams())
                    out.writeframes(clip_file.readframes(clip_file.getnframes()))
                    out.writeframes(bytes(2 * round(PAUSE * clip_file.getframerate())))
    return path, times


def _seconds(path: Path) -> float:
    with wave.open(str(path)) as file:
        return float(file.getnframes() / file.getframerate())


if __name__ == "__main__":
    main()
