"""Figures as the page shows them, and the readings that may stand in their place."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache

from desk.proof.views import FigureView, ReadingView
from extract.record import Finding, Measure, Reading
from extract.units import unit_rows
from publish.other_units import in_other_units
from publish.said import said_figure

_IS_NOT = re.compile(r" is (?P<worked>[^,]*\d[^,]*), not (?P<said>.+)$")
"""How checks say that a figure works out otherwise: "6 in is 152 mm, not 180 mm"."""
_IF_MEANT = re.compile(r"; (?P<worked>[^;]*\d[^;]*?) if .+$")
"""How checks say what a slip of the tongue would have meant: "...; 10 thou if thousandths were meant"."""

_MOST = 6
"""Readings offered; number keys reach nine, and nobody weighs more than a few."""


@lru_cache(maxsize=8192)
def figure_view(measure: Measure) -> FigureView:
    """A measure with its figure in the other system beside it, which is worked out exactly and so remembered."""
    named = " of ".join(one for one in (measure.attribute, measure.item) if one)
    return FigureView(
        id=measure.id,
        display=said_figure(measure),
        what=", ".join(one for one in (named, measure.where) if one),
        other=in_other_units(measure) or "",
        stands=measure.stands,
        sure=None if measure.heard is None else round(measure.heard.confidence, 2),
        attribute=measure.attribute,
        item=measure.item,
        where=measure.where,
        phase=measure.phase,
    )


def readings(measures: Sequence[Measure], finding: Finding | None = None) -> tuple[ReadingView, ...]:
    """What else the figures may be: worked out by the check that doubts them, then by ear; each text once."""
    found: dict[tuple[str, str], ReadingView] = {}
    worked = _worked(measures, finding) if finding is not None else ()
    for one in (*worked, *(rival for measure in measures for rival in _heard(measure))):
        found.setdefault((one.figure, one.text), one)
    return tuple(found.values())[:_MOST]


def _worked(measures: Sequence[Measure], finding: Finding) -> Iterator[ReadingView]:
    """The figure that a check's own sentence offers; of a conversion also what the other figure would be."""
    for form in (_IS_NOT, _IF_MEANT):
        offered = form.search(finding.message)
        if offered is None:
            continue
        said = offered.groupdict().get("said")
        doubted = next((one for one in measures if said is None or _even(one.display) == _even(said)), None)
        if doubted is not None:
            yield ReadingView(figure=doubted.id, text=offered["worked"], said="", because="said_wrong")
    if finding.kind == "conversion" and len(measures) == 2:
        text = in_other_units(measures[1])
        if text:
            # "0.094 in (3/32 in)" gives two forms of one figure.
            yield ReadingView(figure=measures[0].id, text=text.split(" (")[0], said="", because="said_wrong")


def _even(figure: str) -> str:
    return " ".join(figure.split())


def _heard(measure: Measure) -> Iterator[ReadingView]:
    if measure.heard is None:
        return
    for reading in measure.heard.readings[1:]:
        text = _figure_of(reading)
        if text and text != measure.display:
            yield ReadingView(figure=measure.id, text=text, said=reading.text, because="heard_wrong")


def _figure_of(reading: Reading) -> str:
    if reading.value is None:
        return ""
    row = unit_rows().get(reading.unit or "")
    # A value that is a fraction of an inch was said as one, and is read again from its words where it is taken.
    return f"{_plain(reading.value, row.unit.name if row else '')} {row.unit.symbol if row else ''}".strip()


def _plain(value: float, unit: str) -> str:
    """A value as a person would write it: sixty-fourths of an inch as a fraction, else at most four decimals."""
    if unit == "inch" and value * 64 == int(value * 64) and value != int(value):
        whole, rest = divmod(int(value * 64), 64)
        below = 64
        while rest % 2 == 0:
            rest, below = rest // 2, below // 2
        return f"{whole} {rest}/{below}" if whole else f"{rest}/{below}"
    return f"{value:.4f}".rstrip("0").rstrip(".")
