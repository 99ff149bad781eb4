"""Draws the figures of one thing over the dates on which they were taken."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from extract.units import unit_named
from publish.context.plots import Caption, Plot, Spot
from publish.dates import in_words
from publish.library.common import Ends, common_scale
from publish.library.graduations import Graduated, graduate
from publish.library.statements import Statement
from publish.wording import PHASES, count

WIDTH, HEIGHT = 400, 170
_LEFT, _RIGHT, _TOP, _BOTTOM = 62, 16, 26, 28
_APART = 9
"""Between figures of one day."""


def draw_course(what: str, statements: Sequence[Statement]) -> Plot | None:
    """The plot of one thing's figures, oldest first; None where fewer than two sessions have any.

    Dates are spaced as the days lie where every session has one, else session by session.
    """
    scale = common_scale(one.measure for one in statements)
    if scale is None:
        return None
    drawn = [(one, ends) for one in statements if (ends := scale.ends(one.measure)) is not None]
    if len(_slugs(drawn)) < 2:
        return None
    upright = graduate((float(end) for _, ends in drawn for end in (ends.low, ends.high)), halved=bool(scale.below))
    across = _across([one for one, _ in drawn])
    spots = tuple(_spot(one, ends, x, upright) for (one, ends), x in zip(drawn, across, strict=True))
    unit = unit_named(scale.unit).symbol
    phases = dict.fromkeys(one.measure.phase for one, _ in drawn)
    return Plot(
        label=f"{what}: {count(len(drawn), 'figure')} over {count(len(_slugs(drawn)), 'session')}; the table has them",
        width=WIDTH,
        height=HEIGHT,
        upright=True,
        bands=(),
        lines=_lines(upright),
        rule="M" + "L".join(f"{spot.x} {spot.y}" for spot in spots),
        spots=spots,
        captions=(Caption(_LEFT - 8, 14, unit, "end"), *_numbers(upright), *_days(drawn)),
        key=tuple((phase, PHASES[phase]) for phase in PHASES if phase in phases),
    )


def _slugs(drawn: Sequence[tuple[Statement, Ends]]) -> dict[str, Statement]:
    return {one.source.slug: one for one, _ in drawn}


def _across(statements: Sequence[Statement]) -> list[float]:
    """Where each figure stands from left to right; figures of one session side by side."""
    slugs = list(dict.fromkeys(one.source.slug for one in statements))
    days = {one.source.slug: _day(one.source.record.session.date) for one in statements}
    known = [day for day in days.values() if day is not None]
    dated = len(known) == len(slugs) and max(known) > min(known)
    seats = {slug: float((days[slug] or 0) - min(known)) if dated else float(at) for at, slug in enumerate(slugs)}
    most = max(seats.values()) or 1.0
    per = max(sum(one.source.slug == slug for one in statements) for slug in slugs)
    apart = min(_APART, 80 / per)
    room = WIDTH - _LEFT - _RIGHT - 16 - apart * (per - 1)
    sat: dict[str, int] = {}
    places = []
    for one in statements:
        slug = one.source.slug
        places.append(round(_LEFT + 8 + room * seats[slug] / most + apart * sat.get(slug, 0), 1))
        sat[slug] = sat.get(slug, 0) + 1
    return places


def _day(iso: str | None) -> int | None:
    try:
        return date.fromisoformat(iso or "").toordinal()
    except ValueError:
        return None


def _down(part: float) -> float:
    return round(HEIGHT - _BOTTOM - (HEIGHT - _TOP - _BOTTOM) * part, 1)


def _spot(one: Statement, ends: Ends, x: float, upright: Graduated) -> Spot:
    top, bottom = (_down(upright.part(float(end))) for end in (ends.high, ends.low))
    return Spot(x, round((top + bottom) / 2, 1), one.measure.phase, round((bottom - top) / 2, 1))


def _lines(upright: Graduated) -> str:
    across = "".join(f"M{_LEFT} {_down(upright.part(value))}H{WIDTH - _RIGHT}" for value, _ in upright.marks())
    return f"{across}M{_LEFT} {_TOP - 6}V{HEIGHT - _BOTTOM}"


def _numbers(upright: Graduated) -> tuple[Caption, ...]:
    return tuple(Caption(_LEFT - 8, _down(upright.part(value)) + 4, text, "end") for value, text in upright.marks())


def _days(drawn: Sequence[tuple[Statement, Ends]]) -> tuple[Caption, ...]:
    """The first and the last date."""
    (first, _), (last, _) = drawn[0], drawn[-1]
    begin, end = (one.source.record.session.date or "" for one in (first, last))
    return (
        Caption(_LEFT, HEIGHT - 8, in_words(begin), "start"),
        Caption(WIDTH - _RIGHT, HEIGHT - 8, in_words(end), "end"),
    )
