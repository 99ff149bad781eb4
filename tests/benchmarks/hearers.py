"""What is measured: Spokeshave's hearing, and faster-whisper left plain, each in a process of its own."""

from __future__ import annotations

import json
import re
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

Word = tuple[str, float, float]


@dataclass(frozen=True, slots=True)
class Run:
    """One file heard: its words, what it took (the model's loading left out), and the most memory held."""

    words: list[Word]
    seconds: float
    cpu_seconds: float
    """Of all cores together: tells more than the clock where other work is going on."""
    peak_megabytes: float

    @property
    def text(self) -> str:
        """The words as running text."""
        return " ".join(word for word, _, _ in self.words)


def hear_apart(hearer: str, paths: list[Path]) -> list[Run]:
    """Hear files in a fresh process, one after the other. `hearer` is "ours", "unprimed" or "plain"."""
    command = [sys.executable, "-m", "tests.benchmarks.hearers", hearer, *map(str, paths)]
    shown = subprocess.run(command, stdout=subprocess.PIPE, text=True, check=True)
    return [
        Run([tuple(word) for word in run["words"]], run["seconds"], run["cpu"], run["peak"])
        for run in json.loads(shown.stdout)
    ]


def _ours(paths: list[Path], prime: str | None) -> list[dict[str, object]]:
    from capture import hear, load_model

    model = load_model()
    runs = []
    for path in paths:
        began = time.perf_counter(), time.process_time()
        with tempfile.TemporaryDirectory() as folder:
            transcript = hear(path, model=model, prime=prime, checkpoint_folder=Path(folder))
        words = [(word.text, word.start, word.end) for cue in transcript.cues for word in cue.words]
        runs.append(_run(words, *began))
    return runs


def _plain(paths: list[Path]) -> list[dict[str, object]]:
    """faster-whisper as its documentation shows it: window after window, with the same weights, beam and threads."""
    from capture import HearingOptions, load_model

    options = HearingOptions(model="whisper-base")
    whisper = load_model(options).whisper
    runs = []
    for path in paths:
        began = time.perf_counter(), time.process_time()
        segments, _ = whisper.transcribe(
            str(path), language=options.language, beam_size=options.beam_size, word_timestamps=True
        )
        words = [(word.word.strip(), float(word.start), float(word.end)) for each in segments for word in each.words]
        runs.append(_run(words, *began))
    return runs


def _run(words: list[Word], clock: float, cpu: float) -> dict[str, object]:
    seconds, cpu_seconds = time.perf_counter() - clock, time.process_time() - cpu
    peak = re.search(r"VmHWM:\s+(\d+) kB", Path("/proc/self/status").read_text())
    return {"words": words, "seconds": seconds, "cpu": cpu_seconds, "peak": int(peak[1]) / 1024 if peak else 0.0}


def _main() -> None:
    paths = [Path(name) for name in sys.argv[2:]]
    hearers = {
        "ours": lambda: _ours(paths, None),
        "unprimed": lambda: _ours(paths, ""),
        "plain": lambda: _plain(paths),
    }
    json.dump(hearers[sys.argv[1]](), sys.stdout)


if __name__ == "__main__":
    _main()
