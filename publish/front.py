"""Makes up the front page: every session, and what later sessions took back from earlier ones."""

from __future__ import annotations

from capture.shop import ShopSettings
from publish.addresses import SCHEMA_FILE, SESSION_HOME, absolute, address
from publish.all_errata import FILE as ERRATA_FILE
from publish.context import Entry, Erratum, FrontPage, Link, SessionPage, Shelf
from publish.errata import retractions
from publish.galley import Galley
from publish.library.works import works_of
from publish.page import Company
from publish.parts import PARTS
from publish.source import SessionSource
from publish.wording import count

_MOST_PAIRS = 2


def keep_company(sources: tuple[SessionSource, ...], shop: ShopSettings) -> dict[str, Company]:
    """For each session, by slug, the other sessions on the same work and what later ones took back.

    Sessions belong together when they name the same subject; `sources` come oldest first.
    """
    company = {source.slug: Company() for source in sources}
    for work in works_of(sources):
        links = tuple(_page_link(one, "../") for one in work.sources)
        taken_back = [_taken_back(one, shop, "../") for one in work.sources]
        for at, source in enumerate(work.sources):
            company[source.slug] = Company(
                history=links[:at] + links[at + 1 :],
                later_errata=tuple(erratum for later in taken_back[at + 1 :] for erratum in later),
                work=Link(f"{SESSION_HOME}{work.href}", work.subject),
            )
    return company


def make_front(
    sources: tuple[SessionSource, ...], pages: tuple[SessionPage, ...], shop: ShopSettings, shelf: Shelf | None = None
) -> FrontPage:
    """The front page; `pages` are those of `sources`, in the same order, oldest first; `shelf` leads to the library."""
    entries = tuple(_entry(source, page) for source, page in zip(sources, pages, strict=True))
    return FrontPage(
        title=shop.title,
        author=shop.author,
        licence=shop.licence,
        assets="assets/",
        address=absolute(shop.site_address),
        entries=entries[::-1],
        errata=tuple(one for source in reversed(sources) for one in _taken_back(source, shop, "sessions/")),
        all_errata=Link(ERRATA_FILE, "All errata") if any(page.errata for page in pages) else None,
        shelf=shelf or Shelf(),
        schema=Link(SCHEMA_FILE, "What the fields of the records mean (JSON Schema)"),
    )


def _entry(source: SessionSource, page: SessionPage) -> Entry:
    contents = (
        (len(page.stages), "step", "steps"),
        (sum(len(group.rows) for group in page.groups), "figure", "figures"),
        (len(page.errata), "erratum", "errata"),
    )
    return Entry(
        href=f"{address('sessions', source.slug)}/index.html",
        title=page.title,
        date=page.date,
        date_text=page.date_text,
        subject=page.subject,
        trade=page.trade,
        proof=page.proof,
        pairs=page.pairs[:_MOST_PAIRS],
        contents=tuple(count(number, one, many) for number, one, many in contents if number),
    )


def _taken_back(source: SessionSource, shop: ShopSettings, to_sessions: str) -> tuple[Erratum, ...]:
    link = _page_link(source, to_sessions)
    return retractions(Galley(source, shop, taken=PARTS.reserved()), link, link.href)


def _page_link(source: SessionSource, to_sessions: str) -> Link:
    facts = source.record.session
    text = f"{facts.title} ({facts.date})" if facts.date else facts.title
    return Link(f"{to_sessions}{address(source.slug)}/index.html", text)
