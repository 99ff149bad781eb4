"""Finds words of a transcript again, by their seconds or by what they say."""

from __future__ import annotations

import re

from capture.transcript import Cue

Place = tuple[int, int]
"""Cue and word, both from 0."""

_SLACK = 0.0015
"""Seconds: the record rounds to thousandths."""
_EDGES = re.compile(r"^\W+|\W+$")


def words_between(cues: tuple[Cue, ...], first: int, start: float, end: float) -> list[Place]:
    """The words said between two seconds, from cue `first` on."""
    places = []
    for number in range(first, len(cues)):
        if cues[number].start >= end:
            break
        for index, word in enumerate(cues[number].words):
            if word.start < end - _SLACK and word.end > start + _SLACK:
                places.append((number, index))
    return places


def words_like(cues: tuple[Cue, ...], number: int, said: str) -> list[Place]:
    """The words of a cue, and of the next one where they run over, that say `said`; empty where none do."""
    wanted = [_bare(word) for word in said.split()]
    if not wanted or not 0 <= number < len(cues):
        return []
    places = [(cue, index) for cue in (number, number + 1) if cue < len(cues) for index in range(len(cues[cue].words))]
    words = [_bare(cues[cue].words[index].text) for cue, index in places]
    for at in range(len(words) - len(wanted) + 1):
        if places[at][0] == number and words[at : at + len(wanted)] == wanted:
            return places[at : at + len(wanted)]
    return []


def _bare(word: str) -> str:
    return _EDGES.sub("", word.strip()).casefold()
