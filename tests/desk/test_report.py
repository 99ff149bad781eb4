"""What the terminal tells a person."""

from __future__ import annotations

import pytest

from desk.console import clock
from desk.report import needs_a_person
from extract.record import Finding, Record, Remark, SessionFacts


@pytest.mark.parametrize(("seconds", "shown"), [(0, "0:00"), (59.9, "0:59"), (187, "3:07"), (3760, "1:02:40")])
def test_seconds_are_shown_as_on_a_player(seconds: float, shown: str) -> None:
    assert clock(seconds) == shown


def finding(severity: str, message: str) -> Finding:
    return Finding.model_validate(
        {
            "id": message,
            "kind": "conversion",
            "severity": severity,
            "cue": 0,
            "cues": [0],
            "start": 83.2,
            "quote": "",
            "measures": [],
            "message": message,
            "source": "",
        }
    )


def test_the_gravest_comes_first_each_with_its_second() -> None:
    record = Record(
        session=SessionFacts(title="Saddle", source="film.mp4", duration=200),
        findings=(finding("look", "worth a look"), finding("stop", "2 ft is 610 mm, not 450 mm")),
        doubts=(Remark(cue=3, start=120, text="Whether the brace is spruce."),),
    )
    assert needs_a_person(record) == [
        "settle  1:23  2 ft is 610 mm, not 450 mm",
        "look at 1:23  worth a look",
        "look up 2:00  Whether the brace is spruce.",
    ]


def test_a_clean_record_still_asks_to_be_read() -> None:
    record = Record(session=SessionFacts(title="Saddle", source="film.mp4", duration=200))
    assert needs_a_person(record) == ["nothing needs you; read it through all the same"]
