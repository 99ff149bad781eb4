"""Reads the marked talks: what is said in each session, and which procedure each line belongs to."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from capture.transcript import Cue, Transcript, Word
from extract.pipeline import Extractor
from extract.record import Record, SessionFacts
from extract.trade import load_trade

FOLDER = Path(__file__).parent
HALVES = ("tuned", "unseen", "third")
_WORDS_A_SECOND = 2.5
_BREATH = 0.4


@dataclass(frozen=True, slots=True)
class Talk:
    """One session."""

    slug: str
    subject: str
    trade: str
    lines: tuple[str, ...]
    marks: tuple[str, ...]
    """The procedure of each line."""

    @property
    def date(self) -> str:
        """ISO 8601 date of the session."""
        return self.slug[:10]

    @property
    def starts(self) -> tuple[float, ...]:
        """Second at which each line begins."""
        return tuple(cue.start for cue in transcript_of(self).cues)


def talks(half: str) -> tuple[Talk, ...]:
    """The talks of a half, oldest first."""
    found: list[Talk] = []
    head: tuple[str, str, str] = ("", "", "")
    lines: list[str] = []
    marks: list[str] = []
    mark = ""
    for line in (FOLDER / f"{half}.txt").read_text(encoding="utf-8").splitlines():
        if line.startswith("= "):
            _end(found, head, lines, marks)
            slug, subject, trade = (part.strip() for part in line[2:].split("|"))
            head, lines, marks = (slug, subject, trade), [], []
        elif line.startswith("# "):
            mark = line[2:].strip()
        elif line.strip() and not line.startswith(";"):
            lines.append(line.strip())
            marks.append(mark)
    _end(found, head, lines, marks)
    return tuple(found)


def records(wanted: Sequence[Talk]) -> list[Record]:
    """What the extractor makes of talks; it loads its language model once."""
    extractor = Extractor()
    return [extractor.record(transcript_of(one), facts_of(one), load_trade(one.trade)) for one in wanted]


def transcript_of(talk: Talk) -> Transcript:
    """A talk with a breath group a line, spoken evenly."""
    cues: list[Cue] = []
    at = 0.0
    for line in talk.lines:
        said = line.split()
        words = tuple(
            Word(text=word, start=at + number / _WORDS_A_SECOND, end=at + (number + 1) / _WORDS_A_SECOND)
            for number, word in enumerate(said)
        )
        cues.append(Cue(start=at, end=words[-1].end, text=line, words=words))
        at = words[-1].end + _BREATH
    return Transcript(source=f"{talk.slug}.vtt", language="en", duration=at, cues=tuple(cues), word_times="spread")


def facts_of(talk: Talk) -> SessionFacts:
    """What the shop says of its session."""
    return SessionFacts(
        title=talk.slug[11:], date=talk.date, subject=talk.subject, trade=talk.trade, source=f"{talk.slug}.vtt",
        duration=transcript_of(talk).duration,
    )  # fmt: skip


def _end(found: list[Talk], head: tuple[str, str, str], lines: list[str], marks: list[str]) -> None:
    if lines:
        found.append(Talk(*head, tuple(lines), tuple(marks)))
