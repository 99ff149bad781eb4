"""How to hear: every choice with its default, written once."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class HearingOptions:
    """Choices for loading a speech model and hearing a recording with it."""

    model: str | None = None
    """A folder with a faster-whisper model, or a name that faster-whisper can fetch; null for the one that ships, and
    "whisper-base" for the same as it was published, without what it was taught about measures."""
    device: Literal["auto", "cpu", "cuda"] = "auto"
    language: str = "en"
    beam_size: int = 5
    batch_size: int = 4
    """Windows of up to 30 s that the model hears side by side. On a CPU more take memory (1.3 GB at 8, 0.8 GB at 4) and
    save no time."""
    window_seconds: float = 10.0
    """Speech that is heard at once, at most. Whisper takes 30 s, but hears measures as well in 10 s, and the shorter
    sound takes a third less time."""
    window_rest: float = 2.0
    """Seconds of silence behind each window, by which the model knows that a sentence is over."""
    block_seconds: float = 300.0
    """About how much sound lies between two checkpoints."""
    block_slack: float = 30.0
    """How far from `block_seconds` a pause may be looked for, each way."""
    voice_threshold: float = 0.5
    """Probability of voice from which Silero counts a moment as speech; its own default. At 0.35 it found a little more
    beside a running tool, and fewer measures came out right."""
    voice_pad_ms: int = 400
    """Sound kept on each side of speech; Silero's default in faster-whisper."""
    voice_gap_ms: int = 160
    """Silence that parts two stretches of speech; the default of faster-whisper's batched pipeline."""
    max_compression: float = 2.4
    """Text that zlib shrinks more than this is a loop: Whisper's own bound."""
    min_log_probability: float = -1.0
    """Mean log probability below which a window is heard again: Whisper's own bound."""
    no_speech: float = 0.6
    """Probability of no speech above which an unsure window counts as empty: Whisper's own bound."""
