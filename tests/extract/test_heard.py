"""The record keeps what was first heard beside what was decided, and a near tie is worth a look."""

from __future__ import annotations

import pytest

from capture.cues import group
from capture.transcript import HeardFigure, HeardReading, Transcript, Word
from extract.pipeline import Extractor
from extract.record import Record

TEXT = "The shim is fifteen thou thick and the rail is forty inches long."


def transcript(*figures: HeardFigure) -> Transcript:
    words = [
        Word(text=text, start=at / 2, end=at / 2 + 0.5, probability=0.4 if text == "forty" else 0.9)
        for at, text in enumerate(TEXT.split())
    ]
    return Transcript(source="bench.wav", duration=10, cues=group(words), figures=figures)


SHIM = HeardFigure(
    start=1.0,
    end=3.0,
    first_heard="is fifteen mouth thick",
    readings=(
        HeardReading(text="is fifteen thou thick", score=3.2, why="thou sounds like other short words"),
        HeardReading(text="is fifteen mouth thick", score=0.0),
        HeardReading(text="is fifty thou thick", score=-4.0, why="teens and tens sound alike"),
    ),
    confidence=0.93,
)
RAIL = HeardFigure(
    start=4.5,
    end=6.0,
    first_heard="is forty inches",
    readings=(
        HeardReading(text="is forty inches", score=0.0),
        HeardReading(text="is fourteen inches", score=-0.2, why="teens and tens sound alike"),
    ),
    confidence=0.55,
    near_tie=True,
)


@pytest.fixture(scope="module")
def record() -> Record:
    return Extractor().record(transcript(SHIM, RAIL))


def test_a_changed_figure_says_so(record: Record) -> None:
    shim = record.measures[0]
    assert shim.heard is not None
    assert shim.heard.confidence == 0.93
    decided, first, rival = shim.heard.readings
    assert (decided.value, decided.unit, decided.first_heard) == (15, "thou", False)
    assert (first.text, first.first_heard) == ("is fifteen mouth thick", True)
    assert (rival.value, rival.unit, rival.score) == (50, "thou", -4.0)
    assert not shim.heard.near_tie


def test_a_near_tie_is_worth_a_look(record: Record) -> None:
    (finding,) = [one for one in record.findings if one.kind == "misheard"]
    assert finding.severity == "look"
    assert finding.measures == (record.measures[1].id,)
    assert "is fourteen inches" in finding.message
    heard = record.measures[1].heard
    assert heard is not None
    assert [(one.value, one.first_heard) for one in heard.readings] == [(40, True), (14, False)]


BREATH = "The saddle is eleven thirty-seconds tall, take away one thirty-second, which leaves ten thirty-seconds."


def test_a_rival_is_a_doubt_about_its_own_figure_alone() -> None:
    words = [Word(text=text, start=at / 2, end=at / 2 + 0.5, probability=0.9) for at, text in enumerate(BREATH.split())]
    figure = HeardFigure(
        start=0,
        end=8,
        first_heard=BREATH,
        readings=(
            HeardReading(text=BREATH, score=0.0),
            HeardReading(text=BREATH.replace("ten", "five"), score=-0.2, why="short words sound alike"),
        ),
        confidence=0.55,
        near_tie=True,
    )
    record = Extractor().record(Transcript(source="a.wav", duration=10, cues=group(words), figures=(figure,)))
    heard = [one.heard for one in record.measures]
    assert [len(one.readings) for one in heard if one] == [1, 1, 2]
    assert heard[2] is not None
    rival = heard[2].readings[1]
    assert (rival.text, rival.value, rival.unit) == ("five thirty-seconds", 5 / 32, "inch")
    assert [one.measures for one in record.findings if one.kind == "misheard"] == [(record.measures[2].id,)]


def test_without_a_second_hearing_the_least_sure_word_speaks() -> None:
    record = Extractor().record(transcript())
    heard = [one.heard for one in record.measures]
    assert [one.confidence for one in heard if one] == [0.9, 0.4]
    assert not [one for one in record.findings if one.kind == "misheard"]
