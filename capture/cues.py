"""Words grouped into cues, one breath each.

Every way of cutting costs something, and the cheapest way is taken: a cut at the end of a sentence or in a pause costs
next to nothing, one in the middle of a clause is dear, one inside a figure is dearest. "three | sixteenths" is cut only
where the longest cue leaves no choice.
"""

from __future__ import annotations

import tomllib
from collections.abc import Sequence
from functools import cache
from importlib.resources import files
from math import sqrt

from capture.figures import is_linking, is_number, is_unit
from capture.transcript import Cue, Word

SHORTEST = 5
LONGEST = 16
"""Words that a cue should have."""

PAUSE = 0.35
"""Seconds of silence from which a breath is taken."""

LONG_PAUSE = 2.0
"""Seconds of silence that no cue runs over: nobody wants a caption that stands while hands work."""

FIGURE_PAUSE = 4.0
"""Seconds of silence from which two numbers are no longer one figure."""

_STOPS = (".", "?", "!", "…")
_COMMAS = (",", ";", ":", "—", "–")
_CLOSERS = "\"'”’)]"

_CUT_COST = {"stop": 0.0, "pause": 0.5, "comma": 1.5, "opening": 4.0, "none": 6.0, "clinging": 8.0, "figure": 40.0}
"""What a cut costs, by what stands there."""

_KEPT_STOP = 2.5
_KEPT_PAUSE = 3.0
_SHORT = 2.0
_LACKING = 1.0
"""What it costs to run on over a stop or a pause (a longer one more), to be short at all, and for each word lacking."""

_NEVER = 1e9


def group(words: Sequence[Word]) -> tuple[Cue, ...]:
    """Cues of 5 to 16 words, fewer where long pauses stand close.

    Times must rise. Each cue's text is its words joined by single spaces, and its times are those of its first and last
    word. Takes time linear in the number of words.
    """
    if not words:
        return ()
    gaps = [_gap(words, at) for at in range(1, len(words))]
    best = [0.0] + [_NEVER * 2] * len(words)
    came_from = [0] * (len(words) + 1)
    for end in range(1, len(words) + 1):
        kept = 0.0
        for start in range(end - 1, max(end - LONGEST, 0) - 1, -1):
            if start < end - 1:
                kept += _kept(words, gaps[start], start + 1)
            cost = best[start] + kept + _lacking(end - start)
            if end < len(words):
                cost += _cut(words, gaps[end - 1], end)
            if cost < best[end]:
                best[end], came_from[end] = cost, start
    ends: list[int] = []
    at = len(words)
    while at:
        ends.append(at)
        at = came_from[at]
    ends.reverse()
    return tuple(_cue(words[start:end]) for start, end in zip([0, *ends], ends, strict=False))


def _gap(words: Sequence[Word], at: int) -> str:
    """What stands between word `at - 1` and word `at`."""
    before = words[at - 1].text.rstrip(_CLOSERS)
    if before.endswith(_STOPS):
        return "stop"
    if before.endswith(_COMMAS):
        return "comma"
    pause = words[at].start - words[at - 1].end
    if pause < FIGURE_PAUSE and in_figure(words, at):
        return "figure"
    if pause >= PAUSE:
        return "pause"
    if before.casefold() in _small_words()["clinging"]:
        return "clinging"
    return "opening" if words[at].text.casefold() in _small_words()["opening"] else "none"


def in_figure(words: Sequence[Word], at: int) -> bool:
    """True where a cut before word `at` would part a figure or part it from its unit."""
    before, after = words[at - 1].text, words[at].text
    if before.endswith(_STOPS + _COMMAS):
        return False
    if is_unit(before) and at > 1 and is_number(words[at - 2].text):
        return is_unit(after)
    if is_number(before):
        return is_number(after) or is_unit(after) or (is_linking(after) and _leads_on(words, at))
    return is_linking(before) and (is_number(after) or is_unit(after) or is_linking(after)) and _follows(words, at)


def _leads_on(words: Sequence[Word], at: int) -> bool:
    """True where up to three linking words from `at` on lead to a number or unit: "and a half", "of an inch"."""
    for word in words[at : at + 3]:
        if is_number(word.text) or is_unit(word.text):
            return True
        if not is_linking(word.text):
            return False
    return any(is_number(word.text) or is_unit(word.text) for word in words[at + 3 : at + 4])


def _follows(words: Sequence[Word], at: int) -> bool:
    """True where the linking words before `at` come straight after a number, and lead on to one or to a unit."""
    for back in range(at - 1, max(at - 4, -1), -1):
        if not is_linking(words[back].text):
            return is_number(words[back].text) and _leads_on(words, at)
    return False


def _cut(words: Sequence[Word], gap: str, at: int) -> float:
    if gap != "figure" and words[at].start - words[at - 1].end >= LONG_PAUSE:
        return 0.0
    return _CUT_COST[gap]


def _kept(words: Sequence[Word], gap: str, at: int) -> float:
    """What it costs to run on over the gap before word `at`."""
    pause = words[at].start - words[at - 1].end
    if gap == "figure":
        return 0.0
    if pause >= LONG_PAUSE:
        return _NEVER
    return _KEPT_STOP * (gap == "stop") + _KEPT_PAUSE * sqrt(pause / PAUSE) * (pause >= PAUSE)


def _lacking(length: int) -> float:
    return _SHORT + _LACKING * (SHORTEST - length) if length < SHORTEST else 0.0


def _cue(words: Sequence[Word]) -> Cue:
    return Cue(start=words[0].start, end=words[-1].end, text=" ".join(word.text for word in words), words=tuple(words))


@cache
def _small_words() -> dict[str, frozenset[str]]:
    data = tomllib.loads(files("capture").joinpath("data/breath.toml").read_text("utf-8"))
    return {kind: frozenset(words) for kind, words in data.items()}
