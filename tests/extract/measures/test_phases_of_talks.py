"""The phases of whole talks, on which the weights of their signs were fitted (with others): a guard, no measure."""

from __future__ import annotations

import re
from pathlib import Path

from extract.pipeline import Extractor
from tests.extract.narrations import transcript_of

_MARK = re.compile(r"\[([^]]+)\]([ftlg])")
_PHASES = {"f": "as_found", "t": "target", "l": "as_left", "g": "general"}
_FILE = Path(__file__).parent / "phases" / "talks.txt"
_TALKS = [block.strip().splitlines() for block in _FILE.read_text("utf-8").split("\n## ")[1:]]


def test_most_phases_of_the_talks_are_told() -> None:
    extractor = Extractor()
    marked = right = found = 0
    for _, *talk in _TALKS:
        due = [(cue, quote, phase) for cue, line in enumerate(talk) for quote, phase in _MARK.findall(line)]
        record = extractor.record(transcript_of([_MARK.sub(r"\1", line) for line in talk]))
        got = {(one.cue, one.quote.lower()): one.phase for one in record.measures}
        told = [(got[cue, quote.lower()], _PHASES[phase]) for cue, quote, phase in due if (cue, quote.lower()) in got]
        marked, found = marked + len(due), found + len(told)
        right += sum(one == phase for one, phase in told)
    assert found >= 0.8 * marked
    assert right >= 0.8 * found
