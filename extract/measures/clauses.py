"""Where sentences and clauses break.

Takes a break before "and on the treble side it's ...", none between two halves of a list ("hook and needle") and none
inside a figure. Raw captions have no marks, so a new breath breaks a clause unless it only leans on the one before.
"""

from __future__ import annotations

from extract.measures.knowledge import knowledge
from extract.measures.reading import MARKS, Reading

_PAUSE = 2.5
"""Seconds of silence behind which nothing is taken for the same clause."""


class Bounds:
    """For each token the start and end of its stretch between breaks."""

    def __init__(self, breaks: list[bool]) -> None:
        self.start = [0] * len(breaks)
        self.end = [len(breaks)] * len(breaks)
        start = 0
        for at, begins in enumerate(breaks):
            start = at if begins else start
            self.start[at] = start
        end = len(breaks)
        for at in range(len(breaks) - 1, -1, -1):
            self.end[at] = end
            end = at if breaks[at] else end


def sentence_bounds(reading: Reading) -> Bounds:
    """Sentences as the stage before has set them."""
    return Bounds([at == 0 or bool(token.is_sent_start) for at, token in enumerate(reading.doc)])


def clause_bounds(reading: Reading, sentences: Bounds) -> Bounds:
    """Clauses: the stretches within which a word of measure belongs to a figure."""
    return Bounds([sentences.start[at] == at or _opens(reading, at) for at in range(len(reading))])


def _opens(reading: Reading, at: int) -> bool:
    if reading.is_figure(at):
        return False
    word, before = reading.words[at], reading.words[at - 1]
    if reading.narration.start[at] - reading.narration.end[at - 1] > _PAUSE:
        return True
    if before in MARKS and before != "-":
        return True
    words = knowledge().clause
    if word in words.openers:
        if word in ("now", "then") and reading.tag(at - 1)[:2] in ("VB", "PO"):
            return False
        return _has_verb(reading, at + 1, 5) or reading.is_figure(at + 1)
    if reading.new_cue(at) and not reading.narration.punctuated:
        if reading.is_noun(at):
            return _has_verb(reading, at + 1, 3)
        return reading.tags[at] not in ("IN", "TO", "CD") or word in words.subjects
    return word in words.subjects and reading.tag(at - 1)[:2] in ("NN", "RB", "RP") and _has_verb(reading, at + 1, 2)


def _has_verb(reading: Reading, at: int, reach: int) -> bool:
    return any(
        reading.tag(here)[:2] in ("VB", "MD") or reading.word(here) in ("'s", "'re", "'ve", "'ll")
        for here in range(at, at + reach)
    )
