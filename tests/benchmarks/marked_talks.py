"""Every talk whose figures are marked with what they measure: for fitting weights, and for scoring what was fitted.

All inventions of ours: the folders of tests/narrations that may be read, the talks of the measures' tests, those of the
quantities' tests (with their marks in measures/marks), and the phrases of the measures' tests, each a talk of its own.
"""

from __future__ import annotations

import json
import re
import tomllib
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from capture import read_captions
from capture.transcript import Transcript
from extract.measures import find_all
from extract.measures.figure import Finding
from extract.measures.lexicon import lexicon_of
from extract.measures.scene import Scene
from extract.pipeline import Extractor
from extract.trade import guess_trade, load_trade
from tests.benchmarks.narrations import pairs, same_measure, words
from tests.extract.marked import narration as read_marked
from tests.extract.narrations import transcript_of

TESTS = Path(__file__).parent.parent
FOLDERS = ("read", "fitted", "newer", "opened", "wide", "later")
"""Those of tests/narrations that may be learnt from; the others are for scoring only."""
_PHASES = {"f": "as_found", "t": "target", "l": "as_left", "g": "general"}
_MARK = re.compile(r"\[([^]]+)\]([ftlg])")

Mark = dict[str, Any]


@dataclass(frozen=True)
class MarkedTalk:
    """A talk, everything found in it, and the findings that have a mark."""

    name: str
    source: str
    findings: list[Finding]
    marks: list[tuple[Finding, Mark]]


@cache
def marked_talks() -> tuple[MarkedTalk, ...]:
    """All of them, in a fixed order."""
    return tuple(talk for source in (_narrations, _of_measures, _of_quantities, _of_phrases) for talk in source())


@cache
def phase_talks() -> tuple[MarkedTalk, ...]:
    """Talks of which only the phases are marked: tests/extract/measures/phases/talks.txt."""
    found = []
    for name, lines in bracketed().items():
        marks = [
            (cue, quote, {"phase": _PHASES[phase]})
            for cue, line in enumerate(lines)
            for quote, phase in _MARK.findall(line)
        ]
        findings = _findings(transcript_of(plain(lines)))
        found.append(MarkedTalk(name, "phases", findings, _matched(findings, marks)))
    return tuple(found)


def bracketed() -> dict[str, list[str]]:
    """The lines of each such talk, its figures in brackets with their phase."""
    _, *blocks = (TESTS / "extract" / "measures" / "phases" / "talks.txt").read_text("utf-8").split("\n## ")
    return {name: lines for name, *lines in (block.strip().splitlines() for block in blocks)}


def plain(lines: Sequence[str]) -> list[str]:
    """The lines as they are said."""
    return [_MARK.sub(r"\1", line) for line in lines]


def folder_talks(folder: Path, source: str) -> Iterator[MarkedTalk]:
    """The talks of a folder of narration.vtt and gold.json."""
    for path in sorted(folder.rglob("gold.json")):
        gold = json.loads(path.read_text("utf-8"))
        findings = _findings(read_captions(path.parent / "narration.vtt"))
        matched = pairs(gold["measures"], [_as_record(one) for one in findings], same_measure)
        yield MarkedTalk(path.parent.name, source, findings, [(p["finding"], g) for g, p in matched])


def attribute_right(finding: Finding, mark: Mark) -> bool:
    """Whether a finding's attribute shares a word with an accepted name."""
    return bool(words(finding.attribute) & words(" ".join(mark["attribute"])))


def _narrations() -> Iterator[MarkedTalk]:
    for folder in FOLDERS:
        yield from folder_talks(TESTS / "narrations" / folder, folder)


def _of_measures() -> Iterator[MarkedTalk]:
    for path in sorted((TESTS / "extract" / "measures" / "narrations").glob("*.toml")):
        data = tomllib.loads(path.read_text("utf-8"))
        findings = _findings(transcript_of(data["text"].strip().splitlines()))
        marks = [(mark["cue"], mark["quote"], mark) for mark in data["measure"]]
        yield MarkedTalk(path.stem, "measures", findings, _matched(findings, marks))


def _of_quantities() -> Iterator[MarkedTalk]:
    marks = _read_marks(TESTS / "extract" / "measures" / "marks" / "talks.txt")
    for path in sorted((TESTS / "extract" / "quantities" / "narrations").glob("*.txt")):
        talk = read_marked(path)
        findings = _findings(transcript_of(talk.lines))
        own = [(one.cue, one.quote, mark) for one, mark in zip(talk.expected, marks[path.stem], strict=True)]
        yield MarkedTalk(path.stem, "quantities", findings, _matched(findings, own))


def _of_phrases() -> Iterator[MarkedTalk]:
    for path in sorted((TESTS / "extract" / "measures" / "phrases").glob("*.toml")):
        for row in tomllib.loads(path.read_text("utf-8"))["phrase"]:
            findings = _findings(transcript_of(row["says"]), row.get("trade", "general"))
            marks = [mark | {"attribute": [mark.get("attribute", "")]} for mark in row["figures"]]
            yield MarkedTalk(row["title"], "phrases", findings, list(zip(findings, marks, strict=True)))


def _findings(transcript: Transcript, trade_name: str | None = None) -> list[Finding]:
    trade = load_trade(trade_name or guess_trade(transcript.text))
    doc = _extractor().read(transcript, trade)
    return find_all(Scene(doc, doc._.quantities, lexicon_of(trade)))


def _matched(findings: list[Finding], marks: Sequence[tuple[int, str, Mark]]) -> list[tuple[Finding, Mark]]:
    """Findings and marks with the same cue and the same words, in order."""
    left: defaultdict[tuple[int, frozenset[str]], list[Finding]] = defaultdict(list)
    for one in findings:
        got = _as_record(one)
        left[got["cue"], frozenset(words(got["quote"]))].append(one)
    found = []
    for cue, quote, mark in marks:
        here = left[cue, frozenset(words(quote))]
        if here:
            found.append((here.pop(0), mark))
    return found


def _as_record(finding: Finding) -> dict[str, Any]:
    quantity, scene = finding.figure.quantity, finding.figure.scene
    return {
        "finding": finding,
        "cue": scene.narration.cue[quantity.start],
        "quote": scene.narration.quote(scene.doc, quantity.start, quantity.end),
        "value": float(quantity.value),
        "low": None if quantity.low is None else float(quantity.low),
        "high": None if quantity.high is None else float(quantity.high),
        "unit": quantity.unit.name if quantity.unit else None,
    }


def _read_marks(path: Path) -> dict[str, list[Mark]]:
    found: dict[str, list[Mark]] = {}
    for line in path.read_text("utf-8").splitlines():
        if line.startswith("## "):
            here = found.setdefault(line[3:], [])
        elif line and not line.startswith("#"):
            _, phase, names = line.split(" ", 2)
            attribute, item = names.split(";")
            here.append({"phase": _PHASES[phase], "attribute": attribute.split("/"), "item": item.split("/")})
    return found


@cache
def _extractor() -> Extractor:
    return Extractor()
