"""Two sessions of one instrument: what was left so and is found otherwise."""

from __future__ import annotations

import pytest

from extract.checks.sessions import find_between
from extract.record import Record
from tests.extract.checks.records import record_of

_LEFT = "The action is [2 mm | 2 mm | attribute=string height, item=string, phase=as_left] now."


def _session(line: str, date: str, subject: str = "The Heron guitar") -> Record:
    record = record_of((line,))
    facts = record.session.model_copy(update={"date": date, "subject": subject})
    return record.model_copy(update={"session": facts})


@pytest.mark.parametrize(
    ("said", "phase", "date", "subject", "due"),
    [
        ("3 mm", "as_found", "2026-05-01", "the heron  guitar", "look"),
        ("3 mm", "as_left", "2026-03-01", "The Heron guitar", "stop"),
        ("2.0 mm", "as_found", "2026-05-01", "The Heron guitar", None),
        ("3 mm", "as_left", "2026-05-01", "The Heron guitar", None),
        ("3 mm", "as_found", "2026-05-01", "Another guitar", None),
        ("3 mm", "as_found", "2026-05-01", "", None),
        ("3 mm", "as_found", "2026-02-01", "The Heron guitar", None),
    ],
)
def test_what_was_left_is_held_against_what_is_found(
    said: str, phase: str, date: str, subject: str, due: str | None
) -> None:
    earlier = _session(_LEFT, "2026-03-01")
    line = f"The action is [{said} | {said} | attribute=string height, item=string, phase={phase}] here."
    found = find_between(_session(line, date, subject), [earlier])
    assert [one.severity for one in found] == ([due] if due else [])


def test_the_message_names_both_figures_and_the_day() -> None:
    line = "The action is [3 mm | 3 mm | attribute=string height, item=string, phase=as_found]."
    (one,) = find_between(_session(line, "2026-05-01"), [_session(_LEFT, "2026-03-01")])
    told = one.message.replace("\N{NO-BREAK SPACE}", " ")
    assert told == "the string height of the string was left at 2 mm on 2026-03-01 and is found at 3 mm here"
