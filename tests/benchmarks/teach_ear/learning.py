"""Learning the adapter: cross entropy of what the ear should write."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import cos, pi
from typing import Any

import torch
from torch.nn import functional

from tests.benchmarks.teach_ear.disturbing import disturbed
from tests.benchmarks.teach_ear.examples import IGNORED, Examples
from tests.benchmarks.teach_ear.net import Taught


@dataclass(frozen=True, slots=True)
class Course:
    """How to learn. The adapter that ships: broken off by time behind step 734 of 1,500."""

    steps: int = 1500
    stop_after: int = 734
    rank: int = 16
    batch: int = 64
    rate: float = 6e-4
    warm_up: int = 80


def learn(net: Taught, examples: Examples, filters: Any, course: Course, told: Callable[[int, float], None]) -> None:
    """Change `net` step by step; `filters` (80, 201) are faster-whisper's. `told` hears step and loss."""
    device = filters.device
    optimiser = torch.optim.AdamW(net.parameters(), lr=course.rate, weight_decay=0.01, betas=(0.9, 0.98))
    for step in range(min(course.steps, course.stop_after)):
        pace = min(1, (step + 1) / course.warm_up) * (0.5 * (1 + cos(pi * step / course.steps)) + 0.02)
        for group in optimiser.param_groups:
            group["lr"] = course.rate * pace
        sound, given, wanted = (one.to(device) for one in examples.batch(course.batch))
        with torch.no_grad():
            mel = log_mel(disturbed(sound), filters)
        with torch.autocast(device.type, torch.bfloat16):
            hidden = net.decode(given, net.encode(mel))
            kept = wanted != IGNORED
            logits = net.logits(hidden[kept])
        loss = functional.cross_entropy(logits, wanted[kept])
        optimiser.zero_grad()
        loss.backward()
        torch.nn.utils.clip_grad_norm_(net.parameters(), 1.0)
        optimiser.step()
        told(step, float(loss.detach()))


def log_mel(sound: Any, filters: Any) -> Any:
    """What Whisper hears of sound (batch, samples): log-mel frames (Radford et al. 2022, section 2.2)."""
    window = torch.hann_window(400, device=sound.device)
    power = torch.stft(sound, 400, 160, window=window, return_complex=True)[..., :-1].abs() ** 2
    mel = torch.log10((filters @ power).clamp_min(1e-10))
    return (torch.maximum(mel, mel.amax((1, 2), keepdim=True) - 8) + 4) / 4
