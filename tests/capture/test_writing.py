"""The table of figures that were heard twice."""

from __future__ import annotations

from capture.transcript import HeardFigure, HeardReading, Transcript
from capture.writing import explained


def test_a_table_shows_each_figure_with_its_rivals_scores_and_reasons() -> None:
    figure = HeardFigure(
        start=61.2,
        end=62.0,
        first_heard="point to one",
        readings=(
            HeardReading(text="point two one", score=2.5, why="to and two sound alike"),
            HeardReading(text="point to one", score=0.0),
        ),
        confidence=0.71,
        near_tie=True,
    )
    lines = explained(Transcript(source="a.wav", duration=70, cues=(), figures=(figure,))).splitlines()
    assert lines[0].split() == ["at", "sure", "lead", "reading"]
    assert " ".join(lines[1].split()) == "1:01 0.71 2.5 point two one (near tie; to and two sound alike)"
    assert lines[2].split() == ["0.0", "point", "to", "one", "(first", "heard)"]
