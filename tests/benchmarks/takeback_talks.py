"""Every talk whose corrections are marked: for fitting what the signs of a statement taken back weigh.

All are inventions of ours: the folders of tests/narrations that may be read, the phrases of the corrections' tests,
each a talk of its own, and the talks of the tests of measures, quantities and steps, with their marks in
tests/extract/corrections/marked_talks.toml.
"""

from __future__ import annotations

import json
import re
import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from capture import read_captions
from capture.transcript import Transcript
from extract.corrections.scene import Scene
from extract.corrections.signs import Signs
from extract.corrections.statements import Statement
from extract.pipeline import Extractor
from extract.trade import guess_trade, load_trade
from tests.benchmarks.fit_steps import short_narration
from tests.benchmarks.marked_talks import FOLDERS, bracketed, plain
from tests.benchmarks.narrations import same_value, words
from tests.extract.corrections.test_corrections import cases
from tests.extract.marked import narration
from tests.extract.narrations import transcript_of

TESTS = Path(__file__).parent.parent
_PHRASES = (
    "other_benches.txt",
    "other_look_alikes.txt",
    "taken_back.txt",
    "stands.txt",
    "plain_speech.txt",
    "plain_look_alikes.txt",
)
_CUES = 2
"""A correction found at most so many cues from the marked one may be that one."""


@dataclass(frozen=True)
class Mark:
    """What was said and what holds instead; cue, value and unit where they are marked."""

    said: str
    holds: str
    cue: int | None = None
    value: float | None = None
    unit: str | None = None
    exact: bool = False
    """`said` and `holds` are the two figures, word for word."""

    @property
    def figure(self) -> bool:
        """A figure with a unit is taken back."""
        return self.exact or (self.value is not None and bool(self.unit))


@dataclass(frozen=True)
class MarkedTalk:
    """A talk as the rules see it, and the statements that it takes back."""

    source: str
    name: str
    scene: Scene
    signs: Signs
    marks: tuple[Mark, ...]

    def pair(self, wrong: int, right: int) -> tuple[int | None, bool]:
        """Which mark the second figure's holding instead of the first is; whether at least the second is marked."""
        partly = False
        for number, mark in enumerate(self.marks):
            if mark.exact or mark.cue is None or abs(self.scene.pieces[right].cue - mark.cue) <= _CUES:
                said, holds = self._is_said(mark, wrong), self._holds(mark, wrong, right)
                partly = partly or holds
                if said and holds:
                    return number, True
        return None, partly

    def statement(self, one: Statement) -> int | None:
        """Which mark, of those without a figure, this statement is."""
        claim, answer = words(self.text(*one.claim)), words(self.text(*one.answer))
        for number, mark in enumerate(self.marks):
            if mark.figure or (mark.cue is not None and not self._near(mark, one, _CUES - 1)):
                continue
            said, holds = words(mark.said), words(mark.holds)
            if claim & (said - holds or said) and answer & (holds - said or holds):
                return number
        return None

    def beside_a_mark(self, one: Statement) -> bool:
        """A statement near a marked one tells neither for nor against: another reading of the same remark."""
        return any(not mark.exact and (mark.cue is None or self._near(mark, one, _CUES)) for mark in self.marks)

    def text(self, begin: int, end: int) -> str:
        """What was said between two pieces."""
        return self.scene.text(begin, min(end, len(self.scene.pieces)))

    def _near(self, mark: Mark, one: Statement, cues: int) -> bool:
        pieces = self.scene.pieces
        places = (min(at, len(pieces) - 1) for at in (one.begin, one.answer[0]))
        return mark.cue is not None and any(abs(pieces[at].cue - mark.cue) <= cues for at in places)

    def _is_said(self, mark: Mark, wrong: int) -> bool:
        said = self.text(wrong, wrong + 1).lower()
        return said == mark.said.lower() if mark.exact else bool(_spelled(said) & _spelled(mark.said))

    def _holds(self, mark: Mark, wrong: int, right: int) -> bool:
        said = self.text(right, right + 1).lower()
        if mark.exact or mark.value is None:
            return said == mark.holds.lower() if mark.exact else bool(_spelled(said) & _spelled(mark.holds))
        piece, first = self.scene.pieces[right], self.scene.pieces[wrong].measured
        one = piece.measured or first
        unit = one.quantity.unit if one else None
        value = piece.measured.quantity.value if piece.measured else piece.number.value if piece.number else None
        return (
            unit is not None and value is not None and same_value(mark.value, mark.unit or "", float(value), unit.name)
        )


def _spelled(text: str) -> set[str]:
    return {word.strip(".") for word in re.findall(r"[a-z0-9/.]+", text.lower())} - {""}


@cache
def marked_talks() -> tuple[MarkedTalk, ...]:
    """All of them, in a fixed order."""
    return tuple(talk for source in (_narrations, _phrases, _other_tests, _of_phases) for talk in source())


def _narrations() -> Iterator[MarkedTalk]:
    for folder in FOLDERS:
        for path in sorted((TESTS / "narrations" / folder).rglob("gold.json")):
            marks = [
                Mark(one["withdraws"], one["replacement"], one["cue"], one["value"], one["unit"])
                for one in json.loads(path.read_text("utf-8"))["corrections"]
            ]
            yield _talk(folder, path.parent.name, read_captions(path.parent / "narration.vtt"), marks)


def _phrases() -> Iterator[MarkedTalk]:
    for name in _PHRASES:
        for case in cases(name):
            marks = [Mark(due.withdrawn, due.holds, None, due.value, due.unit) for due in case.due]
            yield _talk("phrases", f"{name}: {case.title}", transcript_of(case.cues), marks, "general")


def _other_tests() -> Iterator[MarkedTalk]:
    folder = TESTS / "extract"
    rows = tomllib.loads((folder / "corrections" / "marked_talks.toml").read_text("utf-8"))["talk"]
    marks = {row["file"]: row for row in rows}
    for path in sorted((*folder.glob("*/narrations/*.txt"), *folder.glob("measures/narrations/*.toml"))):
        name = path.relative_to(folder).as_posix()
        row = marks.pop(name, {})
        own = [Mark(one["said"], one["holds"], exact=True) for one in row.get("figures", ())]
        own += [Mark(one["said"], one["holds"], cue=one["cue"]) for one in row.get("statements", ())]
        yield _talk("other tests", name, _transcript(path), own, "general")
    if marks:
        raise ValueError(f"marked_talks.toml marks talks that are not there: {', '.join(marks)}")


def _of_phases() -> Iterator[MarkedTalk]:
    """Talks in which nothing is taken back."""
    for name, lines in bracketed().items():
        yield _talk("phases", name, transcript_of(plain(lines)), (), "general")


def _transcript(path: Path) -> Transcript:
    if path.suffix == ".toml":
        return transcript_of(tomllib.loads(path.read_text("utf-8"))["text"].strip().splitlines())
    return short_narration(path)[0] if path.parent.parent.name == "steps" else transcript_of(narration(path).lines)


def _talk(source: str, name: str, said: Transcript, marks: Sequence[Mark], trade: str | None = None) -> MarkedTalk:
    doc = _extractor().read(said, load_trade(trade or guess_trade(said.text)))
    scene = Scene(doc, doc._.measures)
    return MarkedTalk(source, name, scene, Signs(scene), tuple(marks))


@cache
def _extractor() -> Extractor:
    return Extractor()
