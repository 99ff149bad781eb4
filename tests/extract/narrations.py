"""Makes transcripts from lines of text, for the tests of every stage."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from capture.transcript import Cue, Transcript, Word

_WORDS_A_SECOND = 2.5
_GAP = 0.04


def transcript_of(lines: Sequence[str], gaps: Iterable[float] = ()) -> Transcript:
    """One cue a line, at 150 words a minute, with `gaps` seconds after each (0.04 where none is given)."""
    pauses = list(gaps)
    cues = []
    at = 0.0
    for number, line in enumerate(lines):
        words = []
        for said in line.split():
            words.append(Word(text=said, start=at, end=at + 1 / _WORDS_A_SECOND))
            at += 1 / _WORDS_A_SECOND
        cues.append(Cue(start=words[0].start, end=at, text=line, words=tuple(words)))
        at += pauses[number] if number < len(pauses) else _GAP
    return Transcript(source="made up.vtt", duration=at, word_times="spread", cues=tuple(cues))
