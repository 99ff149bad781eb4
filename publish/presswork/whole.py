"""Prints the pages over all sessions from what the store has of each."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

import orjson
from markupsafe import Markup

from capture.shop import ShopSettings
from publish.context import Link, Shelf
from publish.front import front_page
from publish.library.kit import FOLDER as KIT_FOLDER
from publish.library.kit import kit_page
from publish.library.statements import statements_of
from publish.library.work_page import make_work_page
from publish.library.works import Kin, Work, folded, kin_among
from publish.presswork.figures import Figured
from publish.presswork.parts import FRONT, KIT, ready
from publish.presswork.press import Press, Texts
from publish.presswork.procedures import Procedural
from publish.presswork.reading import Read
from publish.presswork.store import Store
from publish.presswork.sums import sum_of
from publish.render import Renderer

KIT_FILE = f"{KIT_FOLDER}/index.html"


class Whole:
    """Prints the pages over all sessions of one edition."""

    def __init__(
        self,
        reads: Sequence[Read],
        shop: ShopSettings,
        store: Store,
        renderer: Renderer,
        press: Press,
        procedures: Procedural,
        figures: Figured,
    ) -> None:
        self._reads = reads
        self._shop = shop
        self._store = store
        self._renderer = renderer
        self._press = press
        self._procedures = procedures
        self._figures = figures

    def print(self) -> None:
        """All of them."""
        works = self._works()
        kit = self._kit()
        shelf = Shelf(
            works=tuple(Link(kin.href, kin.name) for kin in sorted(works, key=lambda kin: folded(kin.name))),
            figures=self._figures.link,
            kit=Link(KIT_FILE, "Tools and materials") if kit else None,
            procedures=self._procedures.link,
        )
        self._front(shelf)

    def _sums(self, part: str) -> tuple[str, ...]:
        """Of one part of every session, with the sessions' names."""
        return tuple(text for one in self._reads for text in (one.slug, one.sums[part]))

    def _parts(self, part: str) -> list[Any]:
        """One part of every session, oldest first."""
        found = self._store.parts(part)
        return [found[one.slug] for one in self._reads if one.slug in found]

    def _front(self, shelf: Shelf) -> None:
        def make() -> str:
            parts = self._parts(FRONT)[::-1]
            entries = _joined(one["entry"] for one in parts)
            errata = _joined(html for one in parts for html in one["errata"])
            has_errata = any(one.brief.has_errata for one in self._reads)
            return self._renderer.front(front_page(entries, errata, has_errata, self._shop, shelf))

        has = str([one.brief.has_errata for one in self._reads])
        self._press.page("index.html", sum_of(orjson.dumps(shelf), has, *self._sums(FRONT)), make)

    def _works(self) -> tuple[Kin, ...]:
        """The page of each work, from its sessions alone."""
        works = kin_among([one.brief.subject for one in self._reads])
        for kin in works:
            of = [self._reads[at] for at in kin.places]
            done = tuple(dict.fromkeys(link for one in of for link in self._procedures.of(one.slug, "")))
            sums = (text for one in of for text in (one.slug, one.sum))
            total = sum_of(kin.slug, kin.subject, orjson.dumps(done), *sums)
            self._press.page(kin.href, total, lambda kin=kin, of=of, done=done: self._work(kin, of, done))  # type: ignore[misc]
        return works

    def _work(self, kin: Kin, of: Sequence[Read], done: Sequence[Link]) -> str:
        sources = tuple(one.made().gathered.source for one in of)
        pages = {one.slug: one.made().page for one in of}
        statements = statements_of(sources, tuple(pages.values()), self._shop)
        work = Work(kin.slug, kin.subject, sources)
        return self._renderer.library(make_work_page(work, pages, statements, self._shop, done))

    def _kit(self) -> bool:
        """The page of tools and materials, where anything is named."""

        def make() -> tuple[Texts, bool]:
            named = [(sort, key, name, ready(use)) for one in self._parts(KIT) for sort, key, name, use in one]
            page = kit_page(named, self._shop)
            return ({}, False) if page is None else ({KIT_FILE: self._renderer.library(page)}, True)

        named: bool = self._press.files(KIT_FILE, sum_of(*self._sums(KIT)), make)
        return named


def _joined(rows: Iterable[object]) -> tuple[Markup, ...]:
    """Rows that were set before, as one: the template need not take each in its hand."""
    whole = "".join(str(row) for row in rows)
    return (ready(whole),) if whole else ()
