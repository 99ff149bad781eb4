"""Seconds and memory that each way of hearing takes, each run in a process of its own.

`python -m tests.benchmarks.spoken_measures.speed WAY FILE` prints one run as JSON.
"""

from __future__ import annotations

import json
import resource
import subprocess
import sys
import time
from pathlib import Path
from statistics import median

from tests.benchmarks.spoken_measures.bench import Bench
from tests.benchmarks.spoken_measures.tables import rows

TURNS = 3
_KILO = 1024


def speed(bench: Bench) -> list[str]:
    """Wall and processor seconds a second of sound, and peak memory, the ways taking turns on one recording."""
    path = bench.recordings()[0].path
    names = [name for name in bench.ways() if not name.startswith("told")]
    runs: dict[str, list[dict[str, float]]] = {name: [] for name in names}
    for _ in range(TURNS):
        for name in names:
            command = [sys.executable, "-m", "tests.benchmarks.spoken_measures.speed", name, str(path)]
            done = subprocess.run(command, check=True, capture_output=True, text=True)
            runs[name].append(json.loads(done.stdout))
    plain = {key: median(run[key] for run in runs[names[0]]) for key in ("wall", "processor")}
    lines = []
    for name in names:
        wall, processor, memory = (median(run[key] for run in runs[name]) for key in ("wall", "processor", "megabytes"))
        lines.append(
            (
                name,
                f"{wall:.1f}",
                f"{wall / plain['wall']:.2f}",
                f"{processor:.1f}",
                f"{processor / plain['processor']:.2f}",
                f"{memory:.0f}",
            )
        )
    heads = ("heard", "wall, s", "to plain", "processor, s", "to plain", "peak memory, MB")
    title = f"### Speed on {bench.recordings()[0].duration:.0f} s of sound, the median of {TURNS} runs"
    return [title, "", *rows(heads, lines)]


def main(name: str, path: Path) -> None:
    """Hear one file one way, and print what it took; loading the model doesn't count."""
    from capture.model import load_model
    from capture.model_files import NAME
    from capture.options import HearingOptions
    from extract.pipeline import Extractor
    from tests.benchmarks.spoken_measures.sound import Recording
    from tests.benchmarks.spoken_measures.voices import SPEAKERS

    model = load_model(HearingOptions(model=NAME) if name.startswith("plain") else None)
    bench = Bench(model, Extractor())
    way = bench.ways()[name]
    wall, processor = time.perf_counter(), time.process_time()
    way(Recording(SPEAKERS[0], path, ()))
    taken = {
        "wall": time.perf_counter() - wall,
        "processor": time.process_time() - processor,
        "megabytes": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / _KILO,
    }
    sys.stdout.write(json.dumps(taken))


if __name__ == "__main__":
    main(sys.argv[1], Path(sys.argv[2]))
