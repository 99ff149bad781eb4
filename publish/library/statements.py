"""Standing figures of every session, each with the row that tells it on its session's page.

Takes a figure that stands; leaves out what was struck or taken back, a comparison ("2 thou higher"), and a figure that
only says a standing one again in another unit. What an earlier session should have said counts there, where it was put
right, and not a second time in the session that says so.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Protocol

from markupsafe import Markup

from capture.shop import ShopSettings
from extract.record import Measure
from publish.addresses import address
from publish.context import Link, Row, SessionPage
from publish.context.library import Telling
from publish.dates import in_words
from publish.elsewhere import later_than
from publish.galley import Galley
from publish.library.common import Measured
from publish.moments import Moment
from publish.parts import PARTS
from publish.source import SessionSource
from publish.wording import PHASES


class Quoted(Protocol):
    """A standing figure of some session, as pages over all sessions need it."""

    @property
    def measure(self) -> Measured:
        """The figure."""

    @property
    def slug(self) -> str:
        """Its session."""

    @property
    def trade(self) -> str | None:
        """That session's trade."""

    @property
    def settled(self) -> bool:
        """No question about it has to be settled before publishing."""

    def telling(self, root: str) -> Telling | Markup:
        """How a page lists it; `root` leads from that page to the front page's folder."""


@dataclass(frozen=True, slots=True)
class Statement:
    """One standing figure."""

    measure: Measure
    row: Row
    source: SessionSource

    @property
    def slug(self) -> str:
        """Its session."""
        return self.source.slug

    @property
    def trade(self) -> str | None:
        """That session's trade."""
        return self.source.record.session.trade

    def telling(self, root: str) -> Telling:
        """How a page lists it."""
        return tell(self, root)

    @property
    def settled(self) -> bool:
        """No question about it has to be settled before publishing."""
        return not any(flag.must for flag in self.row.queries)


def statements_of(
    sources: Sequence[SessionSource], pages: Sequence[SessionPage], shop: ShopSettings
) -> tuple[Statement, ...]:
    """Every standing figure, in the order of sessions and of speaking; `pages` are those of `sources`."""
    return tuple(
        one
        for source, page in zip(sources, pages, strict=True)
        for one in _of_session(Galley(source, shop, taken=PARTS.reserved()), source, page)
    )


def tell(one: Statement, root: str) -> Telling:
    """A figure as a page of the library lists it; `root` leads from that page to the front page's folder."""
    facts = one.source.record.session
    home = home_of(one.source, root)
    return Telling(
        row=_row(one, root),
        phase=PHASES[one.measure.phase],
        session=Link(f"{home}index.html#{one.row.anchor}", facts.title),
        date=facts.date or "",
        date_text=in_words(facts.date),
        moment=from_here(one.row.moment, home),
        settled=one.settled,
    )


def _row(one: Statement, root: str) -> Row:
    """The row with its link to the session that put it right, as the other page leads there."""
    later = one.measure.ruling.later if one.measure.ruling else None
    if one.row.amended is None or later is None:
        return one.row
    return replace(one.row, amended=replace(one.row.amended, later=later_than(later, f"{root}sessions/")))


def home_of(source: SessionSource, root: str) -> str:
    """The folder of a session's page, with a slash behind."""
    return f"{root}{address('sessions', source.slug)}/"


def from_here(moment: Moment, home: str) -> Moment:
    """A moment whose link leads from another page."""
    return moment if moment.href is None else replace(moment, href=home + moment.href)


def _of_session(galley: Galley, source: SessionSource, page: SessionPage) -> list[Statement]:
    rows = {row.anchor: row for group in page.groups for row in group.rows}
    elsewhere = {one.replacement_measure for one in galley.record.corrections if one.earlier is not None}
    found = []
    for measure in galley.record.measures:
        row = rows.get(galley.anchor("measure", measure.id))
        original = galley.measures.get(measure.same_as or "")
        again = original is not None and original.stands
        if row is not None and measure.stands and not measure.difference and not again and measure.id not in elsewhere:
            found.append(Statement(measure, row, source))
    return found
