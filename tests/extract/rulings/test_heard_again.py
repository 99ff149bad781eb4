"""Rulings on a whole narration, after its words came in other lines and a little earlier or later."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from capture import read_captions
from capture.transcript import Cue, Transcript
from extract.pipeline import Extractor
from extract.rulings import apply
from extract.rulings.items import items_of
from extract.rulings.model import Strike

_NARRATIONS = Path(__file__).parents[2] / "narrations" / "read"
_OFF = 0.3
"""Seconds by which a line may come earlier or later."""
_PLACED = 0.95


def said_in_other_lines(transcript: Transcript, seed: int, shift: float) -> Transcript:
    """The same words in lines of 6 to 14, each line a little off, all of them shifted."""
    chance = random.Random(seed)  # noqa: S311 (made-up line breaks, no secret)
    words = [word for cue in transcript.cues for word in cue.words]
    cues = []
    while words:
        length = chance.randint(6, 14)
        off = shift + chance.uniform(-_OFF, _OFF)
        line = tuple(
            word.model_copy(update={"start": max(0.0, word.start + off), "end": max(0.0, word.end + off)})
            for word in words[:length]
        )
        words = words[length:]
        text = " ".join(word.text for word in line)
        cues.append(Cue(start=line[0].start, end=line[-1].end, text=text, words=line))
    return transcript.model_copy(update={"cues": tuple(cues)})


@pytest.fixture(scope="module")
def extractor() -> Extractor:
    return Extractor()


@pytest.mark.parametrize(("name", "shift"), [("electric-guitar-fret-nut-setup", 0.0), ("saxophone-alto-pads", 40.0)])
def test_figures_are_found_again_and_none_is_taken_for_another(name: str, shift: float, extractor: Extractor) -> None:
    transcript = read_captions(_NARRATIONS / name / "narration.vtt")
    before = extractor.record(transcript)
    after = extractor.record(said_in_other_lines(transcript, seed=64, shift=shift))
    rulings = [
        Strike(on=item, id=f"ruling-{number:04d}")
        for number, item in enumerate(items_of(before).values())
        if item.kind != "finding"
    ]
    proofed = apply(after, rulings)
    assert proofed.kept + proofed.moved + len(proofed.unplaced) == len(rulings)
    present = items_of(after)
    figures = [one for one in rulings if one.on.kind == "measure"]
    placed = [(one.on, present[proofed.placed[one.id]]) for one in figures if one.id in proofed.placed]
    assert len(placed) >= _PLACED * len(figures)
    for then, now in placed:
        assert now.figures == then.figures
        assert abs(now.start - shift - then.start) < 1.0
