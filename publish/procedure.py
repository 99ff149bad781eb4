"""What to do and what to watch: the numbered procedure, cautions, materials, tools, remarks and open questions."""

from __future__ import annotations

from collections.abc import Iterable

from capture.step_stills import tenths_of
from extract.record import Caution, Mention
from extract.record import Remark as Said
from publish.context import Hazard, Link, Named, Query, Remark, Row, SaidFor, Stage
from publish.galley import Galley
from publish.kit.naming import said_otherwise
from publish.moments import Moment
from publish.rows import Rows
from publish.wording import MODES, sentence, under_its_heading

STILLS = "stills"
"""Folder of stills beside a session's page."""


def stages(galley: Galley, rows: Rows) -> tuple[Stage, ...]:
    """The numbered steps with their figures, tools and materials."""
    return tuple(
        Stage(
            anchor=galley.anchor("step", step.id),
            number=step.number,
            text=sentence(step.text),
            mode=MODES[step.mode],
            rows=_told_once(rows.of(step.measures)),
            tools=step.tools,
            materials=step.materials,
            moment=galley.at(step.start),
            still=_still(galley, step.start),
        )
        for step in galley.record.steps
    )


def _still(galley: Galley, second: float) -> str | None:
    tenths = tenths_of(second)
    return f"{STILLS}/{tenths}.jpg" if tenths in galley.source.stills else None


def cautions(galley: Galley) -> tuple[Hazard, ...]:
    """Every caution of the record, none left out."""
    return tuple(
        Hazard(sentence(one.text), _source(one), one.said, galley.at(one.start)) for one in galley.record.cautions
    )


def queries(galley: Galley, rows: Rows) -> tuple[Query, ...]:
    """What a person has to settle, then what is worth a look, each in the order in which it was said."""
    findings = sorted(galley.record.findings, key=lambda one: (one.severity != "stop", one.start))
    return tuple(
        Query(
            anchor=galley.anchor("finding", one.id),
            must=one.severity == "stop",
            message=sentence(one.message),
            quote=one.quote,
            moment=galley.at(one.start),
            source=one.source,
            rows=tuple(Link(f"#{row.anchor}", _row_name(row)) for row in rows.of(one.measures)),
        )
        for one in findings
    )


def named(galley: Galley, mentions: tuple[Mention, ...]) -> tuple[Named, ...]:
    """Tools or materials with each time they are named."""
    listed = []
    for one in mentions:
        other = said_otherwise(one)
        elsewhere = {cue for said in other for cue in said.cues}
        so = {cue for said in one.said if said not in other for cue in said.cues}
        moments = _moments(galley, (cue for cue in one.cues if cue in so or cue not in elsewhere))
        otherwise = tuple(SaidFor(said.name, _moments(galley, said.cues)) for said in other)
        listed.append(Named(one.name, moments, otherwise))
    return tuple(listed)


def _moments(galley: Galley, cues: Iterable[int]) -> tuple[Moment, ...]:
    return tuple(moment for cue in cues if (moment := galley.at_cue(cue)) is not None)


def remarks(galley: Galley, said: tuple[Said, ...]) -> tuple[Remark, ...]:
    """Follow-ups or doubts."""
    return tuple(Remark(under_its_heading(one.text), galley.at(one.start)) for one in said)


def _told_once(rows: tuple[Row, ...]) -> tuple[Row, ...]:
    """Rows without those that already stand behind a withdrawn one, as what to read instead."""
    instead = {row.withdrawn.href for row in rows if row.withdrawn}
    return tuple(row for row in rows if f"#{row.anchor}" not in instead)


def _source(caution: Caution) -> str:
    """Where a caution comes from; empty where that is only that it was said, which stands before it anyway."""
    return "" if caution.said and caution.source.casefold().startswith("said ") else caution.source


def _row_name(row: Row) -> str:
    figure = row.first or row.second
    name = f"{row.what}, {row.part}" if row.part else row.what
    return f"{name}: {figure.text}" if figure else name
