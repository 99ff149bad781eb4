"""Makes up a bench card from the parts of a session's page, so that page and card never tell two things."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from extract.record import Measure, Record
from extract.units import to_unit
from publish.card.fit import setting_for
from publish.context import (
    Card,
    CardFigure,
    CardStep,
    Link,
    Row,
    RowGroup,
    SessionPage,
    Setting,
    Wait,
)
from publish.said import said_figure
from publish.wording import PHASES, with_other

FILE = "card.html"
"""Beside the session's page."""
_TO_WORK_TO = (PHASES["target"], PHASES["as_left"])


def make_card(page: SessionPage, record: Record) -> Card | None:
    """The card of a session; None where nothing was done that could be done again."""
    if not page.stages:
        return None
    steps = tuple(card_step(stage.number, stage.text, stage.mode, stage.rows) for stage in page.stages)
    waits = _waits(page, record)
    shown = {row.anchor for stage in page.stages for row in stage.rows}
    figures = tuple(card_figure(row) for row in _to_work_to(page.groups) if row.anchor not in shown)
    tools, materials = (tuple(one.name for one in named) for named in (page.tools, page.materials))
    return Card(
        title=page.title,
        subject=page.subject,
        source=", ".join(part for part in (page.shop.text, page.date_text) if part),
        author=page.author,
        licence=page.licence,
        assets=page.assets,
        address=f"{page.address}{FILE}" if page.address else None,
        session=Link("index.html", page.title),
        proof=page.proof,
        standing_caution=page.standing_caution,
        cautions=page.cautions,
        tools=tools,
        materials=materials,
        figures=figures,
        waits=waits,
        steps=steps,
    )


def card_setting(card: Card) -> Setting:
    """The size of type for all that a card has."""
    return setting_for(
        title=card.title,
        laid_out=tuple(f"{one} {'':6}" for one in (*card.tools, *card.materials)),
        side=(
            *(f"{one.what} {one.text} {one.note}" for one in card.figures),
            *(f"{wait.step} {wait.what} {wait.time} {'':24}" for wait in card.waits),
            *(one.text for one in card.cautions),
            card.standing_caution,
            f"{'':75}",
        ),
        steps=tuple(
            (
                f"{one.text} {one.mode}",
                *(f"{figure.what} {figure.text} {figure.note}" for figure in one.figures),
            )
            for one in card.steps
        ),
    )


def card_step(number: int, text: str, mode: str, rows: Iterable[Row]) -> CardStep:
    """A step with the figures that its own words don't give already."""
    figures = tuple(card_figure(row) for row in rows if row.withdrawn is None and not _told(row, text))
    return CardStep(number, text, mode, figures)


def _told(row: Row, text: str) -> bool:
    """The step's own words already give the figure in both units, or in its only one."""
    return not row.queries and all(one is None or one.text in text for one in (row.first, row.second))


def card_figure(row: Row) -> CardFigure:
    """A figure to work to, with the other units behind it."""
    what = f"{row.what}, {row.part}" if row.part else row.what
    shown = [f"about {one.text}" if one.about else one.text for one in (row.first, row.second) if one is not None]
    text = with_other(*shown)
    return CardFigure(what, text, bool(row.queries), _unconfirmed(row))


def _unconfirmed(row: Row) -> str:
    """That the machine put the figure right after a later session; the wrong one has no place at the bench."""
    later = row.amended.later if row.amended else None
    return "as a later session has it, not confirmed" if later is not None and later.proposed else ""


def _to_work_to(groups: tuple[RowGroup, ...]) -> Iterable[Row]:
    """Standing figures aimed at, then those as left."""
    for phase in _TO_WORK_TO:
        for group in groups:
            if group.phase == phase:
                yield from (row for row in group.rows if row.withdrawn is None)


def _waits(page: SessionPage, record: Record) -> tuple[Wait, ...]:
    """The standing times of a minute and more among the steps' figures."""
    measures = {one.id: one for one in record.measures}
    return tuple(
        Wait(stage.number, wait_for(measure), said_figure(measure))
        for stage, step in zip(page.stages, record.steps, strict=True)
        for measure in (measures[one] for one in step.measures if one in measures)
        if is_wait(measure)
    )


def wait_for(measure: Measure) -> str:
    """What a time is for: "clamping time, bridge"; of a bare "time" the thing alone says more."""
    attribute = "" if (measure.attribute or "").casefold() == "time" else measure.attribute
    return ", ".join(one for one in (attribute, measure.item) if one) or "time"


def is_wait(measure: Measure) -> bool:
    """A standing time of a minute or more."""
    return measure.stands and not measure.difference and _minutes(measure) >= 1


def _minutes(measure: Measure) -> float:
    if measure.kind != "time" or measure.unit is None:
        return 0.0
    return float(to_unit(Fraction(measure.value), measure.unit, "minute"))
