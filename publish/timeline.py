"""Draws a session to scale: graduations in minutes or seconds, and a mark wherever something was said."""

from __future__ import annotations

from collections.abc import Iterable

from extract.record import Record
from publish.context import Mark, Tick, Timeline
from publish.moments import clock, stamp
from publish.wording import count

WIDTH = 400
INSET = 8
_MOST_LABELS = 6
_INTERVALS = (10, 30, 60, 120, 300, 600, 900, 1800, 3600)
_LONG, _MIDDLE, _SHORT = 18, 12, 7


def draw(record: Record) -> Timeline:
    """The timeline of a record, as long as its recording or as its last item needs."""
    length = length_of(record)
    return Timeline(
        label=f"The session to scale, {clock(length)} long: {in_words(record)}",
        width=WIDTH,
        inset=INSET,
        seconds=stamp(length),
        ticks=ticks_of(length),
        marks=marks_of(record, length),
    )


def length_of(record: Record) -> float:
    """Seconds from the first to the last that the rule shows."""
    return max([record.session.duration, 1.0, *(m.end for m in record.measures), *(s.end for s in record.steps)])


def place(seconds: float, length: float) -> float:
    """Where a second lies along the rule."""
    return round(INSET + (WIDTH - 2 * INSET) * min(max(seconds, 0) / length, 1), 1)


def ticks_of(length: float) -> tuple[Tick, ...]:
    """The graduations, in order."""
    return tuple(Tick(place(second, length), depth, label) for second, depth, label in _graduations(length))


def marks_of(record: Record, length: float) -> tuple[Mark, ...]:
    """What was said, in order."""
    marks = (
        *(Mark(place(one.start, length), "figure") for one in record.measures),
        *(Mark(place(one.start, length), "step") for one in record.steps),
        *(Mark(place(one.start, length), "erratum") for one in record.corrections),
    )
    return tuple(sorted(marks, key=lambda mark: (mark.x, mark.kind)))


def in_words(record: Record) -> str:
    """How much there is of each."""
    said = (
        count(len(record.steps), "step"),
        count(len(record.measures), "figure"),
        count(len(record.corrections), "erratum", "errata"),
    )
    return ", ".join(said)


def _graduations(length: float) -> Iterable[tuple[float, int, str]]:
    interval = next((one for one in _INTERVALS if length / one <= _MOST_LABELS), _INTERVALS[-1])
    tenth = interval / 10
    for number in range(int(length / tenth) + 1):
        if number % 10 == 0:
            yield number * tenth, _LONG, clock(number * tenth)
        else:
            yield number * tenth, _MIDDLE if number % 5 == 0 else _SHORT, ""
