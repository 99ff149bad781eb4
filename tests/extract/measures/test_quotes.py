"""Every measure of a record has its words at its cue, and keeps its id while other cues change."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from capture import read_captions
from capture.transcript import Transcript
from extract.pipeline import Extractor
from extract.record import Record
from tests.extract.narrations import transcript_of

TALKS = sorted((Path(__file__).parents[2] / "narrations").glob("newer/*/narration.vtt"))
OTHER = "and the kettle is on while somebody waves from across the road"
"""Says nothing of any job."""


@cache
def extractor() -> Extractor:
    return Extractor()


@cache
def heard(path: Path) -> tuple[Transcript, Record]:
    transcript = read_captions(path)
    return transcript, extractor().record(transcript)


@pytest.mark.parametrize("path", TALKS, ids=lambda path: path.parent.name)
def test_every_quote_stands_at_its_cue(path: Path) -> None:
    transcript, record = heard(path)
    cues = transcript.cues
    assert record.measures
    for one in record.measures:
        following = cues[one.cue + 1].text if one.cue + 1 < len(cues) else ""
        here = f"{cues[one.cue].text} {following}"
        assert one.quote in here, one
        assert here.index(one.quote) <= len(cues[one.cue].text), one
        assert cues[one.cue].start <= one.start <= one.end <= cues[min(one.cue + 1, len(cues) - 1)].end


@pytest.mark.parametrize("path", TALKS, ids=lambda path: path.parent.name)
def test_ids_stay_when_the_words_of_another_cue_change(path: Path) -> None:
    lines = [cue.text for cue in heard(path)[0].cues]
    before = extractor().record(transcript_of(lines)).measures
    figures = {one.cue for one in before}
    others = [at for at in range(len(lines)) if not figures & {at - 2, at - 1, at, at + 1, at + 2}]
    assert others
    changed = [*lines]
    changed[others[len(others) // 2]] = OTHER
    after = extractor().record(transcript_of(changed)).measures
    assert [(one.id, one.cue, one.quote) for one in after] == [(one.id, one.cue, one.quote) for one in before]
