"""A session as the procedure library takes it: its steps with what is done in them, its standing figures, its cautions.

It is a small value that depends on the session and the shop's settings alone, so that it can be kept and used again
while neither changes.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from capture.shop import ShopSettings
from extract.record import Measure
from publish.addresses import address
from publish.context import Hazard, Proof, Row
from publish.dates import in_words
from publish.galley import Galley
from publish.making import proof_of
from publish.moments import Moment
from publish.parts import PARTS
from publish.procedure import cautions
from publish.procedures.cutting import cut
from publish.procedures.deeds import Deed, deeds_of
from publish.procedures.outline import Runs
from publish.procedures.things import terms_of
from publish.rows import Rows
from publish.source import SessionSource
from publish.wording import MODES

HOME = "../sessions/"
"""From the library's pages to the folders of sessions."""


@dataclass(frozen=True, slots=True)
class Told:
    """A standing figure."""

    measure: Measure
    row: Row
    """As the session's page tells it; its links lead from the library's pages."""

    @property
    def settled(self) -> bool:
        """No question about it has to be settled before publishing."""
        return not any(flag.must for flag in self.row.queries)


@dataclass(frozen=True, slots=True)
class WorkStep:
    """A step of the session."""

    id: str
    number: int
    """From 1."""
    anchor: str
    """Id on the session's page."""
    text: str
    mode: str
    """Empty, or that it was planned or advised rather than done."""
    start: float
    end: float
    """Seconds in the recording."""
    moment: Moment
    deeds: tuple[Deed, ...]
    told: tuple[Told, ...]
    """Its standing figures."""
    tools: tuple[str, ...]
    materials: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SessionWork:
    """One session."""

    slug: str
    title: str
    date: str
    """ISO 8601; empty where unknown."""
    date_text: str
    subject: str
    trade: str
    proof: Proof
    steps: tuple[WorkStep, ...]
    loose: tuple[Told, ...]
    """Standing figures that belong to no step."""
    cautions: tuple[Hazard, ...]
    """Every caution of the session; their seconds lead from the library's pages."""
    by_hand: tuple[str, ...]
    """Tools and materials that a person named for the whole shop."""

    @property
    def href(self) -> str:
        """Its page, from the library's pages."""
        return f"{HOME}{address(self.slug)}/index.html"

    @property
    def runs(self) -> Runs:
        """Its jobs, as its steps alone tell them apart."""
        return cut([step.deeds for step in self.steps])


def work_of(source: SessionSource, shop: ShopSettings) -> SessionWork:
    """What the procedure library takes of a session."""
    galley = Galley(source, shop, taken=PARTS.reserved())
    record, facts = galley.record, galley.record.session
    rows = Rows(galley)
    home = f"{HOME}{address(source.slug)}/"
    told = {one.id: _told(one, rows, home) for one in record.measures if _counts(galley, one)}
    in_steps = {name for step in record.steps for name in step.measures}
    deeds = deeds_of(record.steps, terms_of(facts.trade or ""))
    return SessionWork(
        slug=source.slug,
        title=facts.title,
        date=facts.date or "",
        date_text=in_words(facts.date),
        subject=facts.subject or "",
        trade=facts.trade or "",
        proof=proof_of(source),
        steps=tuple(
            WorkStep(
                id=step.id,
                number=step.number,
                anchor=galley.anchor("step", step.id),
                text=step.text,
                mode=MODES[step.mode],
                start=step.start,
                end=step.end,
                moment=_from(home, galley.at(step.start)),
                deeds=of,
                told=tuple(told[name] for name in step.measures if name in told),
                tools=step.tools,
                materials=step.materials,
            )
            for step, of in zip(record.steps, deeds, strict=True)
        ),
        loose=tuple(one for name, one in told.items() if name not in in_steps),
        cautions=tuple(replace(one, moment=_from(home, one.moment)) for one in cautions(galley)),
        by_hand=tuple(one.name for one in (*record.tools, *record.materials) if one.said),
    )


def _counts(galley: Galley, measure: Measure) -> bool:
    """It stands, is a size and not a comparison, and does not only say a standing one again in another unit."""
    original = galley.measures.get(measure.same_as or "")
    return measure.stands and not measure.difference and not (original is not None and original.stands)


def _told(measure: Measure, rows: Rows, home: str) -> Told:
    (row,) = rows.of((measure.id,))
    return Told(measure, replace(row, moment=_from(home, row.moment)))


def _from(home: str, moment: Moment) -> Moment:
    """The moment as a link from the library's pages."""
    return moment if moment.href is None else replace(moment, href=home + moment.href)
