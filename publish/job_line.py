"""Draws the job to scale: stills of the film above a graduated rule, the steps by number beneath it.

Of many stills five are shown, spread evenly over the steps; each has a line to its second. Numbers stand in two rows,
and where even these have no room, a number is left out: its mark is there, and the procedure has it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from extract.record import Record
from publish.context import Frame, JobLine, Numbered, Stage
from publish.moments import clock
from publish.timeline import WIDTH, in_words, length_of, marks_of, place, ticks_of

_MOST_STILLS = 5
_FRAME_WIDTH, _FRAME_HEIGHT, _BETWEEN = 73.6, 41.4, 7.5
_LEAD_FROM, _LEAD_TO = 55.0, 65.0
"""The line from beneath a still's time to the step's mark."""
_MARKS = 16.0
"""Height of the marks above the rule."""
_RULE, _ROWS, _ROW = 26.0, 2, 11.0
_DIGIT = 6.6
"""Width of a digit on a phone, where type is largest in the drawing's units."""


def draw_job(record: Record, stages: Sequence[Stage]) -> JobLine | None:
    """The drawing of a session; None where it has fewer than two steps."""
    if len(stages) < 2:
        return None
    length = length_of(record)
    frames = tuple(_frames(stages, length))
    top = (_LEAD_TO if frames else 0.0) + _MARKS
    numbers = tuple(_numbers(stages, length, top + _RULE))
    rows = len({one.y for one in numbers})
    shown = f"; stills at {', '.join(one.moment.clock for one in frames)}" if frames else ""
    return JobLine(
        label=f"The job to scale, {clock(length)} long: {in_words(record)}{shown}",
        width=WIDTH,
        height=top + _RULE + 3 + _ROW * rows + 2,
        frame_width=_FRAME_WIDTH,
        frame_height=_FRAME_HEIGHT,
        top=top,
        ticks=ticks_of(length),
        marks=marks_of(record, length),
        frames=frames,
        numbers=numbers,
    )


def _frames(stages: Sequence[Stage], length: float) -> Iterator[Frame]:
    chosen = _chosen([one for one in stages if one.still])
    places = [place(one.moment.seconds, length) for one in chosen]
    for one, x, left in zip(chosen, places, _side_by_side(places), strict=True):
        middle = round(left + _FRAME_WIDTH / 2, 1)
        lead = f"M{middle} {_LEAD_FROM}L{x} {_LEAD_TO}"
        yield Frame(left, one.still or "", one.number, one.moment, lead)


def _chosen(stages: list[Stage]) -> list[Stage]:
    """As many as have room, spread evenly over the steps, the first and the last among them."""
    if len(stages) <= _MOST_STILLS:
        return stages
    last = len(stages) - 1
    return [stages[round(at * last / (_MOST_STILLS - 1))] for at in range(_MOST_STILLS)]


def _side_by_side(places: Sequence[float]) -> list[float]:
    """The left edge of each still: above its place as far as its neighbours and the ends of the rule let it."""
    lefts: list[float] = []
    for x in places:
        least = lefts[-1] + _FRAME_WIDTH + _BETWEEN if lefts else 0.5
        lefts.append(max(x - _FRAME_WIDTH / 2, least))
    most = WIDTH - 0.5 - _FRAME_WIDTH
    for at in reversed(range(len(lefts))):
        lefts[at] = round(min(lefts[at], most), 1)
        most = lefts[at] - _FRAME_WIDTH - _BETWEEN
    return lefts


def _numbers(stages: Sequence[Stage], length: float, beneath: float) -> Iterator[Numbered]:
    ends = [-1.0] * _ROWS
    for one in stages:
        x, half = place(one.moment.seconds, length), len(str(one.number)) * _DIGIT / 2 + 1
        row = next((at for at, end in enumerate(ends) if x - half >= end), None)
        if row is not None:
            ends[row] = x + half
            yield Numbered(x, beneath + 2 + _ROW * (row + 1), one.number)
