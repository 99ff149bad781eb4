"""Records as JSON, and their figures as CSV.

The CSV is by RFC 4180: a heading line, CRLF at line ends, quotes where they are needed. A cell that a spreadsheet would
take for a formula is set behind an apostrophe, so that hostile words in a talk stay words.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterator, Sequence

from extract.record import Measure
from publish.source import SessionSource

COLUMNS = (
    "session", "date", "subject", "trade", "id", "start", "quote", "value", "low", "high", "unit", "ucum", "attribute",
    "item", "where", "phase", "hedged", "limit", "tolerance", "difference", "stands", "ruling",
)  # fmt: skip
_FORMULA = ("=", "+", "-", "@", "\t", "\r")


def as_json(sources: Sequence[SessionSource]) -> str:
    """A list of `{"session": folder, "record": record}`, the oldest first."""
    listed = [{"session": one.slug, "record": json.loads(one.record.to_json())} for one in sources]
    return json.dumps(listed, indent=1, ensure_ascii=False) + "\n"


def as_csv(sources: Sequence[SessionSource]) -> str:
    """A line a figure, the oldest session first, in the order in which they were said."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    for one in sources:
        writer.writerows(_rows(one))
    return text.getvalue()


def _rows(source: SessionSource) -> Iterator[list[object]]:
    facts = source.record.session
    for measure in source.record.measures:
        told = [source.slug, facts.date, facts.subject, facts.trade]
        yield [_cell(value) for value in (*told, *_figures(measure))]


def _figures(measure: Measure) -> Iterator[object]:
    for name in COLUMNS[4:]:
        yield getattr(measure, name) if name != "ruling" else measure.ruling and measure.ruling.verdict


def _cell(value: object) -> object:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str) and value.startswith(_FORMULA):
        return f"'{value}"
    return value
