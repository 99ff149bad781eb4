"""What one session gives to pages over all sessions, made once and kept: its brief, and a part for each such page.

Rows and entries are set here already, so that a page over a thousand sessions only puts them together.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass
from datetime import date
from typing import Any

import orjson
from markupsafe import Markup

from capture.shop import ShopSettings
from extract.record import Phase
from extract.spans import Limit
from publish.all_errata import found_in
from publish.context import SessionPage
from publish.front import concerning_all, entry_of, link_to, taken_back
from publish.gather import Gathered
from publish.kit.rulings.model import Sort
from publish.library.kit import uses_of
from publish.library.reference import ROOT as FIGURES_ROOT
from publish.library.reference import Key, key_of
from publish.library.statements import Statement, statements_of
from publish.presswork.sums import sum_of
from publish.presswork.works import work_part
from publish.procedures import work_of
from publish.procedures.outline import plain
from publish.render import Renderer
from publish.search import Searched, searched_of
from publish.session import session_files
from publish.source import SessionSource

KIN, FRONT, KIT, ERRATA, SEARCH, TERMS = "kin", "front", "kit", "errata", "search", "terms"
OUTLINE, WORK = "outline", "work"
"""Names of parts."""


@dataclass(frozen=True, slots=True)
class Citing:
    """How often a session speaks of one thing that is measured."""

    key: Key
    number: int
    sum: str
    """Over what it says of it."""

    @property
    def part(self) -> str:
        """Name of the part that has it."""
        return part_of(self.key)


@dataclass(frozen=True, slots=True)
class Brief:
    """What is at hand of every session whenever the shop is published."""

    slug: str
    title: str
    date: str
    subject: str
    trade: str
    bench: str
    """What was on the bench, a sentence."""
    recording: str
    """As session.toml names it; may be empty."""
    placed: Mapping[str, str]
    """Recording and pictures: where each lies, by its name beside the page."""
    unsettled: str
    """A line where statements wait to be settled; else empty."""
    warnings: tuple[str, ...]
    has_errata: bool
    citings: tuple[Citing, ...]
    said: tuple[tuple[Sort, str], ...]
    """Tools and materials as the session itself has them."""

    @classmethod
    def of_json(cls, data: dict[str, Any]) -> Brief:
        """A brief that was kept."""
        citings = tuple(Citing((*one["key"],), one["number"], one["sum"]) for one in data["citings"])
        said = tuple((sort, name) for sort, name in data["said"])
        return cls(**{**data, "warnings": tuple(data["warnings"]), "citings": citings, "said": said})


@dataclass(frozen=True, slots=True)
class CitedMeasure:
    """A figure as the store has it."""

    attribute: str | None
    item: str | None
    kind: str | None
    phase: Phase
    limit: Limit | None
    unit: str | None
    value: float
    low: float | None
    high: float | None
    display: str


@dataclass(frozen=True, slots=True)
class Cited:
    """A standing figure as the store has it: enough for the reference pages, its row set already."""

    measure: CitedMeasure
    slug: str
    trade: str | None
    settled: bool
    row: str

    def telling(self, root: str) -> Markup:
        """Its row, which was set for the pages of reference figures alone. `ValueError` for others."""
        if root != FIGURES_ROOT:
            raise ValueError(f"the row was set for pages at {FIGURES_ROOT!r}")
        return ready(self.row)


def part_of(key: Key) -> str:
    """Name of the part with all that a session says of one thing."""
    return f"figures/{'|'.join(key)}"


def cited(kept: list[dict[str, Any]]) -> Iterator[Cited]:
    """The figures of a part that was kept."""
    for one in kept:
        yield Cited(CitedMeasure(**one.pop("measure")), **one)


def ready(html: str) -> Markup:
    """Markup that was set before, out of the store."""
    return Markup(html)  # noqa: S704 (our own template set it, and the store's sum holds)


def parts_of(
    one: Gathered, page: SessionPage, recording: str, shop: ShopSettings, renderer: Renderer
) -> tuple[Brief, dict[str, bytes]]:
    """The brief of a session and its parts by name; `recording` is as session.toml names it."""
    source = one.source
    parts = {
        KIN: orjson.dumps(
            {"link": link_to(source, "../"), "taken_back": concerning_all(taken_back(source, shop, "../"))}
        ),
        FRONT: orjson.dumps(
            {
                "entry": renderer.entry(entry_of(source, page)),
                "errata": [renderer.erratum(erratum) for erratum in taken_back(source, shop, "sessions/")],
            }
        ),
        KIT: orjson.dumps([(sort, key, name, renderer.use(use)) for sort, key, name, use in uses_of(source, page)]),
        ERRATA: orjson.dumps([listed.model_dump(exclude={"first", "out"}) for listed in _errata(source, page)]),
    }
    parts |= search_parts(searched_of(source))
    work = work_of(source, shop)
    parts[OUTLINE], parts[WORK] = orjson.dumps(plain(work)), work_part(work)
    citings = []
    for key, statements in _by_thing(source, page, shop).items():
        data = orjson.dumps([asdict(_cite(statement, renderer)) for statement in statements])
        citings.append(Citing(key, len(statements), sum_of(data)))
        parts[part_of(key)] = data
    facts = source.record.session
    brief = Brief(
        slug=source.slug,
        title=facts.title,
        date=page.date,
        subject=facts.subject or "",
        trade=facts.trade or "",
        bench=page.summary.bench,
        recording=recording,
        placed={name: str(path) for name, path in session_files(one).items()},
        unsettled=f"{source.slug}: {page.proof.text}" if page.proof.state == "unsettled" else "",
        warnings=one.warnings,
        has_errata=bool(page.errata),
        citings=tuple(citings),
        said=tuple((named.sort, named.name) for named in one.said),
    )
    return brief, parts


def search_parts(searched: Searched) -> dict[str, bytes]:
    """What the search takes of a session or procedure, to keep."""
    own = {"title": searched.title, "date": searched.date, "around": searched.around, "items": searched.items}
    index = {"terms": searched.terms, "marks": searched.marks}
    return {SEARCH: orjson.dumps(own), TERMS: orjson.dumps(index)}


def _errata(source: SessionSource, page: SessionPage) -> tuple[Any, ...]:
    # The day is the ledger's; any will do here.
    return found_in((source,), (page,), date.min)


def _by_thing(source: SessionSource, page: SessionPage, shop: ShopSettings) -> dict[Key, list[Statement]]:
    found: dict[Key, list[Statement]] = {}
    for statement in statements_of((source,), (page,), shop):
        key = key_of(statement.measure)
        if key is not None:
            found.setdefault(key, []).append(statement)
    return found


def _cite(statement: Statement, renderer: Renderer) -> Cited:
    measure = statement.measure
    kept = CitedMeasure(**{name: getattr(measure, name) for name in CitedMeasure.__dataclass_fields__})
    row = renderer.telling(statement.telling(FIGURES_ROOT))
    return Cited(kept, statement.slug, statement.trade, statement.settled, row)
