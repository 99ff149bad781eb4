"""Captions as they stand in a file made into a transcript's cues."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from capture.caption_text import Line, SpokenWord
from capture.transcript import Cue, Word

_CONTIGUOUS = 0.1
"""Seconds between two captions that still roll into one another."""

_READING_SPEED = 0.4
"""Seconds a word where a caption gives no usable end: about 150 words a minute."""


@dataclass(frozen=True, slots=True)
class Caption:
    """A caption as written: seconds and lines."""

    start: float
    end: float
    lines: tuple[Line, ...]

    @property
    def words(self) -> tuple[SpokenWord, ...]:
        """The words of all lines."""
        return tuple(word for line in self.lines for word in line)


def make_cues(captions: Sequence[Caption]) -> tuple[Cue, ...]:
    """Cues in order of time that don't overlap. Captions without words are dropped, rolling ones said once."""
    ordered = sorted((caption for caption in captions if caption.lines), key=lambda caption: caption.start)
    return tuple(_cue(caption) for caption in _apart(unroll(ordered)))


def unroll(captions: Sequence[Caption]) -> list[Caption]:
    """Captions without the lines that only roll up.

    Takes "so here" followed straight on by "so here / is the bridge" as "so here", "is the bridge". Two like captions
    stay two where nothing else in the file rolls: people do say things twice.
    """
    rolls = any(
        len(after.lines) > 1 and _follows(before, after) and _texts(before.lines)[-1] == _texts(after.lines)[0]
        for before, after in pairwise(captions)
    )
    if not rolls:
        return list(captions)
    kept: list[Caption] = []
    before: Caption | None = None
    for caption in captions:
        lines = caption.lines
        if before is not None and _follows(before, caption):
            shared = _overlap(_texts(before.lines), _texts(lines))
            lines = lines[shared:]
        before = caption
        if lines:
            kept.append(replace(caption, lines=lines))
    return kept


def _follows(before: Caption, after: Caption) -> bool:
    return after.start <= before.end + _CONTIGUOUS


def _texts(lines: Sequence[Line]) -> list[str]:
    return [" ".join(word.text for word in line) for line in lines]


def _overlap(before: Sequence[str], after: Sequence[str]) -> int:
    """How many lines at the head of `after` are the tail of `before`."""
    for shared in range(min(len(before), len(after)), 0, -1):
        if before[-shared:] == after[:shared]:
            return shared
    return 0


def _apart(captions: Sequence[Caption]) -> list[Caption]:
    """Captions that end before the next begins; those that begin at once share the time by length."""
    apart: list[Caption] = []
    at = 0
    while at < len(captions):
        together = [caption for caption in captions[at:] if caption.start == captions[at].start]
        at += len(together)
        start, end = together[0].start, max(caption.end for caption in together)
        if end <= start:
            end = start + _READING_SPEED * sum(len(caption.words) for caption in together)
        if at < len(captions):
            end = min(end, captions[at].start)
        letters = [sum(len(word.text) + 1 for word in caption.words) for caption in together]
        begin, done = start, 0
        for caption, length in zip(together, letters, strict=True):
            done += length
            finish = start + (end - start) * done / sum(letters)
            apart.append(replace(caption, start=begin, end=finish))
            begin = finish
    return apart


def _cue(caption: Caption) -> Cue:
    words = caption.words
    starts = _starts(words, caption.start, caption.end)
    ends = [*starts[1:], caption.end]
    return Cue(
        start=round(caption.start, 3),
        end=round(caption.end, 3),
        text=" ".join(word.text for word in words),
        words=tuple(
            Word(text=word.text, start=round(start, 3), end=round(end, 3))
            for word, start, end in zip(words, starts, ends, strict=True)
        ),
    )


def _starts(words: Sequence[SpokenWord], start: float, end: float) -> list[float]:
    """When each word begins: at its tag's moment, else its share by length of the time between two known moments."""
    known = [(0, start)]
    for number, word in enumerate(words):
        if number and word.moment is not None and known[-1][1] <= word.moment <= end:
            known.append((number, word.moment))
    known.append((len(words), end))
    starts: list[float] = []
    for (first, begin), (last, finish) in pairwise(known):
        lengths = [len(word.text) + 1 for word in words[first:last]]
        done = 0
        for length in lengths:
            starts.append(begin + (finish - begin) * done / sum(lengths))
            done += length
    return starts
