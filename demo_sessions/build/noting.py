"""truth.json from a script and the times of its words."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path
from typing import Any

from demo_sessions.build.script import Line, Script
from demo_sessions.build.sound import Placed, Recording
from demo_sessions.truth import (
    Sentence,
    TimedAction,
    TimedFigure,
    TimedGist,
    TimedMisstatement,
    TimedTakenBack,
    Truth,
)

INVENTED = "All people, instruments and events are invented; the voice is a speech synthesiser. Speaker: {people}."


def make_truth(session: Path, script: Script, recording: Recording) -> Truth:
    """What the recording of a session contains, with its seconds."""
    facts = tomllib.loads((session / "session.toml").read_text(encoding="utf-8"))
    lines = list(zip(script.line, recording.lines, strict=True))
    return Truth(
        title=facts["title"],
        subject=facts["subject"],
        date=str(facts["date"]),
        trade=facts["trade"],
        recording=facts["recording"],
        duration=_seconds(recording.duration),
        invented=INVENTED.format(people=", ".join(script.people)),
        voice=script.voice,
        sentences=tuple(
            Sentence(text=line.say, start=_seconds(placed.start), end=_seconds(placed.end)) for line, placed in lines
        ),
        measures=tuple(
            TimedFigure(**note.model_dump(), start=start)
            for line, placed in lines
            for note, start in zip(line.measures, _starts(line, placed), strict=True)
        ),
        corrections=tuple(
            TimedTakenBack(**note.model_dump(), start=_start(line, placed, note.quote))
            for line, placed in lines
            for note in line.corrections
        ),
        faults=tuple(
            TimedMisstatement(**note.model_dump(), start=_start(line, placed, note.quote))
            for line, placed in lines
            for note in line.faults
        ),
        steps=tuple(
            TimedAction(**note.model_dump(), start=_seconds(placed.start))
            for line, placed in lines
            for note in line.steps
        ),
        cautions=_gists(lines, "cautions"),
        materials=script.mentions.materials,
        tools=script.mentions.tools,
        follow_ups=_gists(lines, "follow_ups"),
        doubts=_gists(lines, "doubts"),
    )


def _gists(lines: list[tuple[Line, Placed]], kind: str) -> tuple[TimedGist, ...]:
    def notes(line: Line) -> Any:
        return getattr(line, kind)

    return tuple(
        TimedGist(gist=note.gist, start=_seconds(placed.start)) for line, placed in lines for note in notes(line)
    )


def _starts(line: Line, placed: Placed) -> list[float]:
    """Seconds of the figures of a line, each looked for after the one before."""
    starts, after = [], 0
    for note in line.measures:
        starts.append(_start(line, placed, note.quote, after))
        after = _place(line.say, note.quote, after) + 1
    return starts


def _start(line: Line, placed: Placed, quote: str, after: int = 0) -> float:
    word = len(line.say[: _place(line.say, quote, after)].split())
    return _seconds(placed.word_starts[word])


def _place(text: str, quote: str, after: int) -> int:
    found = re.compile(rf"\b{re.escape(quote)}\b").search(text, after)
    if found is None:
        raise ValueError(f"{quote!r} is not in {text[after:]!r}; list figures in the order they are said")
    return found.start()


def _seconds(value: float) -> float:
    return round(value, 2)
