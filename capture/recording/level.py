"""Whether the sound that comes in is loud enough, in words. The page judges by the same bounds."""

from __future__ import annotations

import math
import tomllib
from collections import deque
from dataclasses import asdict, dataclass, field
from functools import cache
from importlib.resources import files
from typing import Literal

Verdict = Literal["nothing", "quiet", "clipped", "good"]


@dataclass(frozen=True, slots=True)
class Bounds:
    """The bounds in data/level.toml; levels in decibels of full scale, times in seconds."""

    clipped: float
    clipped_told: float
    quiet: float
    quiet_after: float
    nothing: float
    scale_from: float

    def as_json(self) -> dict[str, float]:
        """For the page."""
        return asdict(self)


@cache
def bounds() -> Bounds:
    """The bounds, read once."""
    return Bounds(**tomllib.loads((files("capture") / "data" / "level.toml").read_text(encoding="utf-8")))


def decibels(amplitude: float) -> float:
    """An amplitude between 0 and 1 in decibels of full scale; silence is -120."""
    return 20 * math.log10(max(amplitude, 1e-6))


WORDS: dict[Verdict, str] = {
    "nothing": "No sound comes in. Is the microphone muted, or the wrong one?",
    "quiet": "Too quiet. Bring the microphone nearer, or turn it up.",
    "clipped": "Too loud: the sound is clipped. Turn the microphone down, or move it away.",
    "good": "The level is good.",
}


@dataclass(slots=True)
class Level:
    """What came in over the last seconds."""

    limits: Bounds = field(default_factory=bounds)
    _loud: deque[tuple[float, float]] = field(default_factory=deque)
    _clipped_at: float = -math.inf
    _began: float | None = None

    def hear(self, second: float, power: float, peak: float) -> Verdict:
        """Take in a tenth of a second: its mean power (of the root mean square) and its peak, in decibels."""
        self._began = second if self._began is None else self._began
        self._loud.append((second, power))
        while self._loud[0][0] < second - self.limits.quiet_after:
            self._loud.popleft()
        if peak >= self.limits.clipped:
            self._clipped_at = second
        if second - self._clipped_at <= self.limits.clipped_told:
            return "clipped"
        if second - self._began < self.limits.quiet_after:
            return "good"
        loudest = max(heard for _, heard in self._loud)
        return "nothing" if loudest < self.limits.nothing else "quiet" if loudest < self.limits.quiet else "good"
