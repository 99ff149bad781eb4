"""Makes every page of the library, by its name on the site."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from capture.shop import ShopSettings
from publish.context import Link, SessionPage, Shelf
from publish.context.library import WorkPage
from publish.context.reference import KitPage, ReferenceIndex, ReferencePage
from publish.library.kit import FOLDER as KIT
from publish.library.kit import make_kit
from publish.library.reference import FOLDER as FIGURES
from publish.library.reference import make_reference
from publish.library.statements import Statement, statements_of
from publish.library.work_page import make_work_page
from publish.library.works import folded, works_of
from publish.source import SessionSource

Library = dict[str, WorkPage | ReferencePage | ReferenceIndex | KitPage]
"""Pages by the name of their file on the site; names are addresses too: letters, digits, hyphens and slashes."""


def make_library(sources: Sequence[SessionSource], pages: Sequence[SessionPage], shop: ShopSettings) -> Library:
    """Every page of the library; `pages` are those of `sources`, oldest first."""
    statements = statements_of(sources, pages, shop)
    library: Library = dict(_works(sources, pages, statements, shop))
    library |= make_reference(statements, shop)
    kit = make_kit(sources, pages, shop)
    return library if kit is None else library | {f"{KIT}/index.html": kit}


def shelf_of(library: Library) -> Shelf:
    """What the front page leads to."""
    works = [(page.subject, name) for name, page in library.items() if isinstance(page, WorkPage)]
    figures, kit = f"{FIGURES}/index.html", f"{KIT}/index.html"
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
