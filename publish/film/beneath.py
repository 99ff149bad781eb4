"""A plain text to set beneath a film: chapters with their time, errata, cautions, figures; errata are never left out.

A line a moment, `0:04:12 Rout the slot`, from 0:00:00 on. What has no room is told at the end, with how much of it
there is. Lengths are in characters (Unicode code points).
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from publish.context import Row, SessionPage
from publish.film.slips import Slip, said_once, told
from publish.wording import PHASES, STANDING_CAUTION, count, with_other

BENEATH = "beneath-the-film.txt"
ROOM = 5000
"""Characters, unless told otherwise."""
_LONGEST = 160
"""Characters of one line: more is no note, and hides the others."""


@dataclass(frozen=True, slots=True)
class _Part:
    """Lines under one heading."""

    heading: str
    lines: tuple[str, ...]
    one: str
    many: str
    bound: bool = False
    """Stands whole, whatever room there is."""


def beneath(page: SessionPage, chapters: Sequence[tuple[float, str]], slips: Sequence[Slip], room: int = ROOM) -> str:
    """The text of a session's film; `chapters` are seconds and titles, the first of them at 0.

    It is no longer than `room`, unless title, errata and the standing caution alone are. Where there is no room for
    all, cautions go before chapters, and chapters before figures.
    """
    parts = (
        _Part("Chapters", tuple(f"{hours(at)} {_line(title)}" for at, title in chapters), "chapter", "chapters"),
        _Part("Errata", tuple(_erratum(one) for one in said_once(slips)), "erratum", "errata", True),
        _Part("Cautions", _cautions(page), "caution", "cautions"),
        _Part("Figures", tuple(_figures(page)), "figure", "figures"),
    )
    head = [_whole(page.title), *([f"Notes with every figure: {page.address}"] if page.address else [])]
    foot = [_whole(STANDING_CAUTION)]
    kept = {part.heading: part.lines if part.bound else () for part in parts}
    for heading in ("Cautions", "Chapters", "Figures"):
        for part in (one for one in parts if one.heading == heading):
            kept[part.heading] = _fitting(part, parts, kept, head, foot, room)
    return _text(parts, kept, head, foot)


def hours(seconds: float) -> str:
    """A second as a player counts it, hours and all: 0:04:12."""
    minutes, second = divmod(int(max(seconds, 0)), 60)
    hour, minute = divmod(minutes, 60)
    return f"{hour}:{minute:02d}:{second:02d}"


def _fitting(
    part: _Part,
    parts: tuple[_Part, ...],
    kept: dict[str, tuple[str, ...]],
    head: list[str],
    foot: list[str],
    room: int,
) -> tuple[str, ...]:
    """As many of a part's lines as there is room for, from the first on; halves the search, so that long films cost
    little."""
    low, high = 0, len(part.lines)
    while low < high:
        middle = (low + high + 1) // 2
        tried = {**kept, part.heading: part.lines[:middle]}
        if len(_text(parts, tried, head, foot)) <= room:
            low = middle
        else:
            high = middle - 1
    return part.lines[:low]


def _text(parts: Iterable[_Part], kept: dict[str, tuple[str, ...]], head: list[str], foot: list[str]) -> str:
    blocks = ["\n".join(head)]
    left_out = []
    for part in parts:
        lines = kept[part.heading]
        if lines:
            blocks.append("\n".join([part.heading, *lines]))
        if len(lines) < len(part.lines):
            told_of = f" of {count(len(part.lines), part.one, part.many)}"
            left_out.append(f"{len(part.lines) - len(lines)}{told_of}")
    if left_out:
        foot = [*foot, f"Left out for want of room: {', '.join(left_out)}."]
    return "\n\n".join([*blocks, "\n".join(foot)]) + "\n"


def _erratum(one: Slip) -> str:
    again = ", ".join(hours(second) for second in one.again)
    return f"{hours(one.start)} {_whole(told(one))}{f' (said again at {again})' if again else ''}"


def _cautions(page: SessionPage) -> tuple[str, ...]:
    return tuple(f"{hours(one.moment.seconds)} {_line(one.text)}" for one in page.cautions)


def _figures(page: SessionPage) -> Iterable[str]:
    """Standing figures as found, then as left, then those aimed at."""
    order = (PHASES["as_found"], PHASES["as_left"], PHASES["target"])
    for phase in order:
        rows = [row for group in page.groups if group.phase == phase for row in group.rows if row.withdrawn is None]
        yield from (f"{hours(row.moment.seconds)} {_line(_figure(row, phase))}" for row in rows)


def _figure(row: Row, phase: str) -> str:
    what = ", ".join(part for part in (row.what, row.part) if part)
    shown = [f"about {one.text}" if one.about else one.text for one in (row.first, row.second) if one is not None]
    figure = with_other(*shown)
    waits = ", not settled" if any(flag.must for flag in row.queries) else ""
    return f"{what}: {figure}, {phase}{waits}"


def _line(text: str) -> str:
    """A text on one line, cut at a word where it is too long."""
    whole = _whole(text)
    if len(whole) <= _LONGEST:
        return whole
    return whole[: _LONGEST - 1].rsplit(" ", 1)[0].rstrip(" ,.;:") + "…"


def _whole(text: str) -> str:
    """A text on one line, without characters that no one sees."""
    shown = "".join(" " if unicodedata.category(one) in ("Cc", "Cf", "Zl", "Zp") else one for one in text)
    return " ".join(shown.split())
