"""A shop of generated sessions, for benchmarks.

The sessions are made after the invented one of tests/publish (34 lines, 30 figures), four to a work, dated a week
apart, without recordings: forty kinds of job, each with figures of its own things, sizes different from session to
session, and one session in twenty-five that takes something back of an earlier one. The steps of each are two jobs,
each done in several sessions, in other company (`generated_jobs.py`).
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

from extract.record import Measure, Record
from extract.units import unit_rows
from publish.source import SessionSource
from tests.benchmarks.generated_jobs import THINGS, jobs_of
from tests.publish.session import source

_TO_A_WORK = 4
_KINDS = len(THINGS)
_TAKES_BACK = 25


def generated(number: int) -> SessionSource:
    """The session of this number."""
    honest = source()
    day = date(2031, 1, 6) + timedelta(weeks=number)
    facts = honest.record.session.model_copy(
        update={
            "title": f"Job {number}", "date": day.isoformat(), "subject": f"mandola no. {number // _TO_A_WORK}",
            "trade": "strings",
        }
    )  # fmt: skip
    kind, factor = number % _KINDS, 1 + number * 7 % 61 / 64
    corrections = tuple(
        one for one in honest.record.corrections if one.scope == "this_session" or number % _TAKES_BACK == 0
    )
    left = {one.id for one in corrections}
    kept = (one for one in honest.record.measures if one.corrected_by is None or one.corrected_by in left)
    measures = tuple(_varied(one, kind, factor) for one in kept)
    record: Record = honest.record.model_copy(
        update={
            "session": facts, "measures": measures, "corrections": corrections,
            "steps": jobs_of(number, honest.record.steps, {one.id: one.display for one in measures}),
        }
    )  # fmt: skip
    return replace(honest, slug=f"{day.isoformat()}-job-{number}", record=record, recording=None)


def _varied(one: Measure, kind: int, factor: float) -> Measure:
    """The figure of another thing, and of another size."""
    value = round(one.value * factor, 3)
    unit = unit_rows()[one.unit].unit.symbol if one.unit in unit_rows() else ""
    item = THINGS[(kind + len(one.item)) % _KINDS] if one.item else None
    low, high = (None if end is None else round(end * factor, 3) for end in (one.low, one.high))
    change = {
        "value": value, "low": low, "high": high, "display": f"{value:g} {unit}".strip(), "item": item, "where": None
    }  # fmt: skip
    return one.model_copy(update=change)
