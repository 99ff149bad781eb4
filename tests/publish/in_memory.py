"""A whole site made in memory from sessions that are on no disk: what the press prints bit by bit, in one go."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from capture.shop import ShopSettings
from publish.all_errata import make_errata_page, notice_of
from publish.context import ErrataPage, FrontPage, Link, SessionPage, Shelf
from publish.context.library import WorkPage
from publish.context.plots import ShopPlot
from publish.context.reference import KitPage, ReferenceIndex, ReferencePage
from publish.front import company_at, concerning_all, entry_of, front_page, link_to, taken_back
from publish.ledger import Ledger
from publish.library.comparing import Compared, compared
from publish.library.kit import FOLDER as KIT_FOLDER
from publish.library.kit import kit_page, uses_of
from publish.library.reference import FOLDER as FIGURES_FOLDER
from publish.library.reference import Key, Subject, key_of, names_of, reference_entry, reference_index, reference_page
from publish.library.statements import Statement, statements_of
from publish.library.work_page import make_work_page
from publish.library.works import Work, folded, kin_among
from publish.page import Company
from publish.render import Renderer
from publish.source import SessionSource

Library = dict[str, WorkPage | ReferencePage | ReferenceIndex | KitPage]
"""Pages by the name of their file on the site; names are addresses too: letters, digits, hyphens and slashes."""


def make_library(sources: Sequence[SessionSource], pages: Sequence[SessionPage], shop: ShopSettings) -> Library:
    """Every page of the library; `pages` are those of `sources`, oldest first."""
    statements = statements_of(sources, pages, shop)
    library: Library = dict(_works(sources, pages, statements, shop))
    library |= make_reference(statements, shop)
    kit = make_kit(sources, pages, shop)
    return library if kit is None else library | {f"{KIT_FOLDER}/index.html": kit}


def shelf_of(library: Library) -> Shelf:
    """What the front page leads to."""
    works = [(page.subject, name) for name, page in library.items() if isinstance(page, WorkPage)]
    figures, kit = f"{FIGURES_FOLDER}/index.html", f"{KIT_FOLDER}/index.html"
    return Shelf(
        works=tuple(Link(name, subject) for subject, name in sorted(works, key=lambda one: folded(one[0]))),
        figures=Link(figures, "Reference figures") if figures in library else None,
        kit=Link(kit, "Tools and materials") if kit in library else None,
    )


def _works(
    sources: Sequence[SessionSource],
    pages: Sequence[SessionPage],
    statements: Sequence[Statement],
    shop: ShopSettings,
) -> Iterator[tuple[str, WorkPage]]:
    by_slug = {source.slug: page for source, page in zip(sources, pages, strict=True)}
    told: dict[str, list[Statement]] = {}
    for one in statements:
        told.setdefault(one.source.slug, []).append(one)
    for work in works_of(sources):
        own = [one for source in work.sources for one in told.get(source.slug, ())]
        yield work.href, make_work_page(work, by_slug, own, shop)


def works_of(sources: Sequence[SessionSource]) -> tuple[Work, ...]:
    """The works with their sessions, in the order in which they first came; `sources` come oldest first."""
    kin = kin_among([source.record.session.subject for source in sources])
    return tuple(Work(one.slug, one.subject, tuple(sources[at] for at in one.places)) for one in kin)


def make_reference(
    statements: Sequence[Statement], shop: ShopSettings
) -> Iterator[tuple[str, ReferencePage | ReferenceIndex]]:
    """Each page by its name on the site, the list last; nothing where nothing was measured often enough."""
    keyed = [(key, one) for one in statements if (key := key_of(one.measure)) is not None]
    entries = []
    for key, slug in names_of((key, one.slug) for key, one in keyed).items():
        subject = Subject(slug, *key, tuple(one for other, one in keyed if other == key))
        page = reference_page(subject, shop)
        yield f"{FIGURES_FOLDER}/{slug}.html", page
        entries.append(reference_entry(subject, page))
    if entries:
        yield f"{FIGURES_FOLDER}/index.html", reference_index(tuple(entries), shop)


def make_drawings(statements: Sequence[Statement]) -> tuple[dict[str, ShopPlot], dict[Key, Compared]]:
    """The drawings of all figures of a thing by their names on the site, and what pages are told of each."""
    keyed = [(key, one) for one in statements if (key := key_of(one.measure)) is not None]
    named = names_of((key, one.slug) for key, one in keyed)
    drawings, told = {}, {}
    for key in dict.fromkeys(key for key, _ in keyed):
        subject = Subject("", *key, tuple(one for other, one in keyed if other == key))
        both = compared(subject, f"{FIGURES_FOLDER}/{named[key]}.html" if key in named else None)
        if both is not None:
            drawing, told[key] = both
            drawings[told[key].plot] = drawing
    return drawings, told


def make_kit(sources: Sequence[SessionSource], pages: Sequence[SessionPage], shop: ShopSettings) -> KitPage | None:
    """The page; None where no session names a tool or a material. `pages` are those of `sources`, oldest first."""
    named = [one for source, page in zip(sources, pages, strict=True) for one in uses_of(source, page)]
    return kit_page(named, shop)


def keep_company(sources: tuple[SessionSource, ...], shop: ShopSettings) -> dict[str, Company]:
    """For each session, by slug, the other sessions on the same work and what later ones took back.

    Sessions belong together when they name the same subject; `sources` come oldest first.
    """
    company = {source.slug: Company() for source in sources}
    for kin in kin_among([source.record.session.subject for source in sources]):
        of = [sources[at] for at in kin.places]
        links = [link_to(one, "../") for one in of]
        errata = [concerning_all(taken_back(one, shop, "../")) for one in of]
        for at, source in enumerate(of):
            company[source.slug] = company_at(at, kin, links, errata)
    return company


def make_front(
    sources: tuple[SessionSource, ...], pages: tuple[SessionPage, ...], shop: ShopSettings, shelf: Shelf | None = None
) -> FrontPage:
    """The front page; `pages` are those of `sources`, in the same order, oldest first; `shelf` leads to the library."""
    entries = tuple(entry_of(source, page) for source, page in zip(sources, pages, strict=True))
    errata = tuple(one for source in reversed(sources) for one in taken_back(source, shop, "sessions/"))
    return front_page(entries[::-1], errata, any(page.errata for page in pages), shop, shelf or Shelf())


def make_errata(ledger: Ledger, shop: ShopSettings, renderer: Renderer, *published: str) -> ErrataPage:
    """The page of all errata; `published` are the sessions that have a page to lead to."""
    slugs = frozenset(published)
    return make_errata_page(ledger, shop, lambda one, at: renderer.notice(notice_of(one, at, slugs)))
