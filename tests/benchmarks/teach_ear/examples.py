"""Windows of sound with what the ear should write, drawn anew for every step."""

from __future__ import annotations

import json
from collections import defaultdict
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from typing import Any

import numpy as np
import torch

from capture.mixing import Samples
from tests.benchmarks.spoken_measures.sound import RATE, samples_of

WINDOW = 12.0
"""Seconds of sound in an example: as long as the windows that are heard, with the silence behind them."""
ROOM = 1.5
"""Seconds at its end that stay free."""
EMPTY = 0.03
"""Share of examples in which nobody speaks."""
PRIMES = (0.55, 0.25)
"""Share of examples with the prime of a general bench, and with another."""
IGNORED = -100
"""PyTorch's mark for a token that is not learnt."""


@dataclass(slots=True)
class Spoken:
    """Lines by voice."""

    by_voice: dict[str, list[tuple[Samples, str]]]

    @classmethod
    def read(cls, folder: Path) -> Spoken:
        """The lines that `speaking.speak` wrote."""
        found: dict[str, list[tuple[Samples, str]]] = defaultdict(list)
        for line in json.loads((folder / "lines.json").read_text("utf-8")):
            found[line["voice"]].append((samples_of(folder / line["file"]), line["written"]))
        return cls(dict(found))


@dataclass(slots=True)
class Examples:
    """Draws batches. `tokenizer` is faster-whisper's; `primes` has the general bench's in front."""

    spoken: Spoken
    tokenizer: Any
    primes: list[str]
    random: Random = field(default_factory=lambda: Random(1))  # noqa: S311 (nothing secret is drawn)

    def batch(self, count: int) -> tuple[Any, Any, Any]:
        """Sound (count, samples), tokens and what should follow each (count, length)."""
        sounds = np.zeros((count, round(WINDOW * RATE)), np.float32)
        rows: list[tuple[list[int], list[int]]] = []
        for number in range(count):
            sound, written = self._window()
            sounds[number, : len(sound)] = sound
            rows.append(self._tokens(written))
        longest = max(len(given) for given, _ in rows)
        end = self.tokenizer.eot
        given = torch.tensor([row + [end] * (longest - len(row)) for row, _ in rows])
        wanted = torch.tensor([row + [IGNORED] * (longest - len(row)) for _, row in rows])
        return torch.from_numpy(sounds), given, wanted

    def _window(self) -> tuple[Samples, str]:
        """One to three lines of one voice, with pauses, at one level."""
        random = self.random
        if random.random() < EMPTY:
            return np.zeros(0, np.float32), ""
        voices = list(self.spoken.by_voice)
        lines = self.spoken.by_voice[random.choices(voices, [len(self.spoken.by_voice[one]) for one in voices])[0]]
        parts: list[Samples] = []
        texts: list[str] = []
        for _ in range(random.choice([1, 1, 2, 2, 3])):
            sound, text = random.choice(lines)
            gap = np.zeros(round(random.uniform(0.05, 0.9) * RATE), np.float32)
            if sum(map(len, parts)) + len(gap) + len(sound) > (WINDOW - ROOM) * RATE:
                break
            parts += [gap, sound]
            texts.append(text)
        if not parts:
            return np.zeros(0, np.float32), ""
        whole = np.concatenate(parts)
        loud = float(np.sqrt(np.mean(whole[np.abs(whole) > 0.01] ** 2)))
        return np.asarray(whole * 10 ** (random.uniform(-28, -14) / 20) / loud, np.float32), " ".join(texts)

    def _tokens(self, written: str) -> tuple[list[int], list[int]]:
        share = self.random.random()
        prime = self.primes[0] if share < PRIMES[0] else ""
        if PRIMES[0] <= share < sum(PRIMES):
            prime = self.random.choice(self.primes)
        tokenizer = self.tokenizer
        head = [tokenizer.sot_prev, *tokenizer.encode(" " + prime)] if prime else []
        head += [*tokenizer.sot_sequence, tokenizer.no_timestamps]
        text = tokenizer.encode(" " + written) if written else []
        return head + text, [IGNORED] * (len(head) - 1) + text + [tokenizer.eot]
