"""What a session gives to the search: its items for the session's own file, its terms and figures for the index."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import floor, log2

from publish.find.items import Item, items_of
from publish.find.scale import Span
from publish.search.stems import stems_in
from publish.source import SessionSource

_STEPS = 12
"""Marks an octave on the scale that figures are looked up on: neighbours are six parts in a hundred apart."""
_DEEPEST = 6
"""Octaves that a span is followed downwards when it reaches nought."""
NOUGHT = "0"
"""The mark of all that reaches nought or below."""

Row = tuple[str, float | None, str, str, str, str | None, float | None, float | None]
"""Sort, second (none of a procedure over all sessions), anchor, how it is told, what it is found by where that differs,
and its figure in its kind's base."""


@dataclass(frozen=True, slots=True)
class Searched:
    """One session, as the search takes it."""

    title: str
    date: str
    around: str
    """Words that every item is found by."""
    items: tuple[Row, ...]
    terms: tuple[str, ...]
    """Stems of all words."""
    marks: tuple[tuple[str, str], ...]
    """Kind and mark of each figure."""


def searched_of(source: SessionSource) -> Searched:
    """What the search takes of a session."""
    facts = source.record.session
    around = " ".join(part for part in (facts.title, facts.subject, facts.trade) if part)
    return searched_as(facts.title, facts.date or "", around, tuple(_row(one) for one in items_of(source)))


def searched_as(title: str, date: str, around: str, rows: tuple[Row, ...]) -> Searched:
    """What the search takes of these rows; every one of them is found by the words around them too."""
    spans = (Span(kind, low, high) for *_, kind, low, high in rows if kind and low is not None and high is not None)
    marks = {(span.kind, mark) for span in spans for mark in marks_of(span)}
    words = " ".join((around, *(more or told for _, _, _, told, more, *_ in rows)))
    return Searched(title, date, around, rows, tuple(sorted(stems_in(words))), tuple(sorted(marks)))


def marks_of(span: Span) -> Iterator[str]:
    """Every mark of the scale that a span covers."""
    if span.low <= 0:
        yield NOUGHT
    if span.high > 0:
        last = _mark(span.high)
        first = _mark(span.low) if span.low > 0 else last - _DEEPEST * _STEPS
        yield from (str(mark) for mark in range(first, last + 1))


def _mark(value: float) -> int:
    return floor(log2(value) * _STEPS)


def _row(one: Item) -> Row:
    more = "" if one.words == one.told else one.words
    span = one.span
    figure = (span.kind, span.low, span.high) if span else (None, None, None)
    return one.sort, one.start, one.anchor, one.told, more, *figure
