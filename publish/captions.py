"""Captions and chapters as WebVTT files.

WebVTT: W3C Candidate Recommendation of 4 April 2019, section 4. Characters that would end a cue or begin markup are
written as character references, so that no word that was said can become anything but text.
"""

from __future__ import annotations

from collections.abc import Iterable

import pysubs2

from extract.record import Measure, Phase, Record
from publish.context import Run, Spoken
from publish.wording import sentence

_ESCAPES = {"&": "&amp;", "<": "&lt;", ">": "&gt;", "{": "&#123;", "}": "&#125;", "\\": "&#92;"}
_SHORTEST = 0.001


def captions(spoken: tuple[Spoken, ...]) -> str:
    """What was said, as a WebVTT file; what to read instead of words stands behind them in brackets."""
    return cue_file((cue.moment.seconds, float(cue.until), _caption(cue)) for cue in spoken)


def chapters(record: Record) -> str:
    """The steps, and where the first figures as found and as left are given, as a WebVTT file of chapters."""
    marks = chapter_marks(record)
    last = max(record.session.duration, marks[-1][0] + 1)
    ends = [*(start for start, _ in marks[1:]), last]
    return cue_file((start, end, title) for (start, title), end in zip(marks, ends, strict=True))


def chapter_marks(record: Record) -> list[tuple[float, str]]:
    """The second at which each chapter begins, with its title; the first begins at 0."""
    begins = {0.0: sentence(record.session.subject or record.session.title).rstrip(".")}
    begins |= _first(record, "as_found", "As found") | _first(record, "as_left", "As left")
    if record.follow_ups:
        begins.setdefault(min(one.start for one in record.follow_ups), "Left for later")
    begins |= {step.start: f"{step.number}. {step.text}" for step in record.steps}
    return sorted(begins.items())


def plain_text(spoken: tuple[Spoken, ...]) -> str:
    """The transcript as plain text, a line a cue, each with its time."""
    return "".join(f"[{cue.moment.clock}] {_caption(cue)}\n" for cue in spoken)


def _first(record: Record, phase: Phase, name: str) -> dict[float, str]:
    of_phase: list[Measure] = [one for one in record.measures if one.phase == phase and one.stands]
    return {of_phase[0].start: name} if of_phase else {}


def _caption(cue: Spoken) -> str:
    words = []
    for run in cue.runs:
        words.append(run.text + _bracketed(run))
    return " ".join("".join(words).split())


def _bracketed(run: Run) -> str:
    if run.note is None:
        return ""
    return f" [{'withdrawn, ' if run.withdrawn else ''}read {sentence(run.note.read).rstrip('.')}]"


def cue_file(cues: Iterable[tuple[float, float, str]], settings: str = "") -> str:
    """Cues (start and end in seconds, words) as a WebVTT file; `settings` hold for each of them."""
    file = pysubs2.SSAFile()
    for start, end, text in cues:
        file.append(
            pysubs2.SSAEvent(
                start=_milliseconds(start), end=_milliseconds(max(end, start + _SHORTEST)), text=_escape(text)
            )
        )
    text = file.to_string("vtt")
    # No words can look like a line of times: what would is written as references.
    return "\n".join(f"{line} {settings}" if settings and " --> " in line else line for line in text.split("\n"))


def _milliseconds(seconds: float) -> int:
    return round(seconds * 1000)


def _escape(text: str) -> str:
    return "".join(_ESCAPES.get(character, character) for character in " ".join(text.split()))
