"""The words of an item in their context, by their seconds."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from dataclasses import dataclass

from capture.transcript import Transcript

_BEFORE, _BEHIND = 22, 14
"""Words shown before and behind: about two breaths and one."""

_SLACK = 0.02
"""Seconds; the record rounds its times to thousandths, and spread times may meet exactly."""


@dataclass(frozen=True, slots=True)
class Said:
    """Words in question with those around them."""

    before: str
    quote: str
    after: str


class Context:
    """Finds the words said between two seconds."""

    def __init__(self, transcript: Transcript | None) -> None:
        words = [word for cue in transcript.cues for word in cue.words] if transcript else []
        self._texts = [word.text.strip() for word in words]
        self._starts = [word.start for word in words]
        self._ends = [word.end for word in words]
        self._cues = transcript.cues if transcript else ()

    def around(self, start: float, end: float, quote: str) -> Said:
        """The words from `start` to `end` seconds with their context; `quote` stands for them where none are timed."""
        first = bisect_right(self._ends, start + _SLACK)
        last = bisect_left(self._starts, end - _SLACK)
        if first >= last:
            return Said("", quote, "")
        return Said(
            " ".join(self._texts[max(0, first - _BEFORE) : first]),
            " ".join(self._texts[first:last]),
            " ".join(self._texts[last : last + _BEHIND]),
        )

    def cue_at(self, second: float) -> int:
        """The cue that is said at a second; where nothing is, the one before; 0 where there is none."""
        starts = [one.start for one in self._cues]
        return max(bisect_right(starts, second) - 1, 0)

    def cue_start(self, cue: int, otherwise: float) -> float:
        """The second at which a cue begins."""
        return self._cues[cue].start if 0 <= cue < len(self._cues) else otherwise

    def cue_end(self, cue: int, otherwise: float) -> float:
        """The second at which a cue ends."""
        return self._cues[cue].end if 0 <= cue < len(self._cues) else otherwise
