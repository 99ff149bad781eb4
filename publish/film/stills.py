"""Stills for a film that is out: what was said at which second, and what is correct, each 1920 by 1080, as SVG.

SVG 2 (W3C Candidate Recommendation of 4 October 2018); `title` and `desc` (section 5.7) hold the whole text for whoever
can't see it, also where the picture had to cut it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from publish.film.setting import set_in, width_of
from publish.film.slips import Slip, said_once
from publish.moments import clock

_WIDTH, _HEIGHT = 1920, 1080
_LEFT, _RIGHT, _TOP, _BOTTOM = 330, 60, 170, 960
_MARGIN = 240
"""What the time has beside the line."""
_MOST = 2
"""Errata on one still: more could not be read in a thumbnail."""
_LEADING, _BETWEEN = 1.16, 0.42


@dataclass(frozen=True, slots=True)
class Line:
    """A line of type."""

    x: float
    y: float
    text: str
    kind: str
    """wrong, right, or at: the time in the margin."""
    size: int


@dataclass(frozen=True, slots=True)
class Still:
    """One still."""

    title: str
    """Alternative in words, the whole of it."""
    desc: str
    head: str
    foot: str
    lines: tuple[Line, ...]
    rules: tuple[float, ...]
    """Where a mark stands on the line down the page."""


def errata_stills(title: str, slips: Sequence[Slip]) -> dict[str, Still]:
    """The stills of a session by the names of their files, two errata on each; none where nothing was said wrong.

    What no person has confirmed is on none: a still can't be taken back.
    """
    sure = said_once([one for one in slips if not one.proposed])
    shared = [sure[at : at + _MOST] for at in range(0, len(sure), _MOST)]
    return {f"errata-still-{number}.svg": _still(title, of, number, len(shared)) for number, of in enumerate(shared, 1)}


def in_words(one: Slip) -> str:
    """A slip as its still reads: `said 3/32 in at 4:12, correct 7/64 in`."""
    times = " and ".join(clock(second) for second in (one.start, *one.again))
    return f"said {one.wrong} at {times}, correct {one.right}"


def _again(one: Slip) -> str:
    """The other seconds at which it is said; the first stands in the margin."""
    return f", again at {', '.join(clock(second) for second in one.again)}" if one.again else ""


def _still(title: str, slips: Sequence[Slip], number: int, of: int) -> Still:
    lines = tuple(_lines(slips))
    return Still(
        title=f"Errata to {title}",
        desc="; ".join(in_words(one) for one in slips) + ".",
        head="Errata" if of == 1 else f"Errata, {number} of {of}",
        foot=set_in([title], (_WIDTH - _LEFT - _RIGHT) / 40 * 72, 90, 1.0, 0).lines[0][0],
        lines=lines,
        rules=tuple(line.y for line in lines if line.kind == "at"),
    )


def _lines(slips: Sequence[Slip]) -> Iterator[Line]:
    texts = [text for one in slips for text in (f"said {one.wrong}{_again(one)}", f"correct {one.right}")]
    made = set_in(texts, _WIDTH - _LEFT - _RIGHT, _BOTTOM - _TOP, _LEADING, _BETWEEN)
    y = float(_TOP)
    for at, lines in enumerate(made.lines):
        for number, line in enumerate(lines):
            y += made.size * _LEADING
            if at % 2 == 0 and number == 0:
                at_clock = clock(slips[at // 2].start)
                yield Line(_LEFT - 60, y, at_clock, "at", int(min(made.size, 88, _MARGIN / width_of(at_clock))))
            yield Line(_LEFT, y, line, "right" if at % 2 else "wrong", made.size)
        y += made.size * _BETWEEN
