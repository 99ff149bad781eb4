"""`spokeshave publish` says what a person should know, and no more than fits on a screen."""

from __future__ import annotations

from desk.commands.publish import SHOWN, told


def test_a_few_warnings_are_all_told() -> None:
    assert list(told(["the first", "the second"])) == ["the first", "the second"]


def test_of_a_thousand_warnings_the_first_are_told_and_the_others_counted() -> None:
    lines = list(told([f"session {number}" for number in range(1000)]))
    assert lines[:SHOWN] == [f"session {number}" for number in range(SHOWN)]
    assert lines[SHOWN:] == [f"and {1000 - SHOWN} more like these; `spokeshave proof` lists what waits in a session"]
