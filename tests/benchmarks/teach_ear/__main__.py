"""The command behind `python -m tests.benchmarks.teach_ear`."""

from __future__ import annotations

import argparse
from pathlib import Path

import numpy as np


def main() -> None:
    """Make the lines into sound, or learn from them."""
    parser = argparse.ArgumentParser(description="Teach the ear spoken measures.")
    parts = parser.add_subparsers(dest="part", required=True)
    speaking = parts.add_parser("speak", help="make lines into sound")
    speaking.add_argument("voices", type=Path, help="the folder `voices` of the npm package kokoro-js")
    speaking.add_argument("folder", type=Path)
    speaking.add_argument("--count", type=int, default=1800)
    speaking.add_argument("--seed", type=int, default=77)
    learning = parts.add_parser("learn", help="learn an adapter from them")
    learning.add_argument("folder", type=Path)
    learning.add_argument("adapter", type=Path)
    learning.add_argument("--steps", type=int, default=734)
    learning.add_argument("--batch", type=int, default=64)
    asked = parser.parse_args()
    if asked.part == "speak":
        from tests.benchmarks.teach_ear.speaking import speak

        asked.folder.mkdir(parents=True, exist_ok=True)
        speak(asked.voices, asked.folder, asked.count, asked.seed)
    else:
        _learn(asked.folder, asked.adapter, asked.steps, asked.batch)


def _learn(folder: Path, adapter: Path, steps: int, batch: int) -> None:
    import torch
    from faster_whisper.feature_extractor import FeatureExtractor
    from faster_whisper.tokenizer import Tokenizer

    from capture.model import load_model
    from capture.model_files import NAME, shipped_model
    from capture.options import HearingOptions
    from capture.prime import compose_prime, fit_prime, ingredients
    from tests.benchmarks.teach_ear.examples import Examples, Spoken
    from tests.benchmarks.teach_ear.learning import Course, learn
    from tests.benchmarks.teach_ear.net import Taught

    device = "cuda" if torch.cuda.is_available() else "cpu"
    model = load_model(HearingOptions(model=NAME, device="cpu"))
    tokenizer = Tokenizer(model.whisper.hf_tokenizer, True, "transcribe", "en")
    ways = ["", *ingredients()]
    primes = [fit_prime(compose_prime(leave_out=[way] if way else []), model.count_tokens) for way in ways]
    course = Course(stop_after=steps, batch=batch)
    net = Taught(shipped_model() / "model.bin", course.rank, device)
    filters = torch.from_numpy(FeatureExtractor().mel_filters.astype(np.float32)).to(device)
    examples = Examples(Spoken.read(folder), tokenizer, primes)
    learn(net, examples, filters, course, lambda step, loss: print(f"step {step + 1}  loss {loss:.3f}", flush=True))
    np.savez(adapter, **net.learnt())


if __name__ == "__main__":
    main()
