"""Prints the procedure library, and tells the other pages what it holds.

Which procedures there are is found again only where what was done in a session, or the shop's log of rulings on them,
has changed; a page is printed anew where one of its own sessions has.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any

import orjson
from pydantic import TypeAdapter

from capture.shop import Shop, ShopSettings
from publish.context import Link
from publish.context.procedures import ProcedureEntry
from publish.presswork.parts import OUTLINE, WORK, ready, search_parts
from publish.presswork.press import Press, Texts
from publish.presswork.reading import Read
from publish.presswork.store import Store
from publish.presswork.sums import file_sum, sum_of
from publish.presswork.works import work_in
from publish.procedures import INDEX, SessionWork, links_of, log_of
from publish.procedures.address_book import read_book, write_book
from publish.procedures.cards import make_procedure_card
from publish.procedures.every import every_page, version_in_full
from publish.procedures.gathering import Stretches, procedure_of, stretches_of
from publish.procedures.library import (
    Library,
    Shelved,
    Study,
    Ways,
    brought_up,
    library_in,
    library_of,
    study,
    study_in,
)
from publish.procedures.listing import entry_of, index_page
from publish.procedures.moved import moved_pages
from publish.procedures.outline import outline_in
from publish.procedures.pages import figures_of, procedure_page
from publish.procedures.places import card_name, every_name, page_name
from publish.procedures.procedure import Procedure
from publish.render import Renderer
from publish.search.procedures import FOLDER as SEARCH_FOLDER
from publish.search.procedures import place_of, searched_procedure

_KNOWN, _STUDY, _VERSIONS = "procedures", "study", "versions"
"""What is known of the library as a whole, under a name that no file has; of versions beside one another; and these as
they are set."""


class Procedural:
    """The procedures of one edition."""

    def __init__(self, reads: Sequence[Read], shop: Shop, store: Store, renderer: Renderer, press: Press) -> None:
        self._reads = reads
        self._shop = shop
        self._store = store
        self._renderer = renderer
        self._press = press
        self._settings: ShopSettings = shop.settings
        self._told: dict[str, Any] = {}
        self._works: dict[str, SessionWork] = {}
        self._any = False
        self.searched: dict[str, Mapping[str, str]] = {}
        """What the search takes of each procedure with a page: by name there, the sums of its parts."""

    def print(self) -> None:
        """Every page and bench card."""
        self._told = self._found()
        library = library_in(self._told["library"])
        self._any = bool(library.shelved)
        stretches = stretches_of(library)
        works = {one.slug: one.sums.get(WORK, "") for one in self._reads}
        entries = [self._procedure(one, stretches, works) for one in library.shelved]
        self._store.keep_parts(f"{SEARCH_FOLDER}/", self.searched)
        if entries:
            listed = orjson.dumps([entries, [(one.pinned, len(one.ran)) for one in library.shelved]])
            self._press.page(INDEX, sum_of(listed), lambda: self._index(library, entries))
        self._moved(library, entries)

    @property
    def link(self) -> Link | None:
        """The list of procedures, from the front page; null where no session has a step."""
        return Link(INDEX, "Procedures") if self._any else None

    @property
    def warnings(self) -> tuple[str, ...]:
        """A line for each ruling, or line of the log, without effect."""
        return tuple(self._told["warnings"])

    def of(self, slug: str, root: str, *, steps: bool = False) -> tuple[Link, ...]:
        """The procedures that a session did; `root` leads from the page to the front page's folder."""
        return tuple(Link(f"{root}{one['href']}", one["text"]) for one in self.told(slug, steps=steps))

    def told(self, slug: str, *, steps: bool = False) -> Sequence[Mapping[str, str]]:
        """The same as the store keeps it; addresses lead from the front page's folder."""
        listed: Sequence[Mapping[str, str]] = self._told["steps" if steps else "plain"].get(slug, ())
        return listed

    def _found(self) -> dict[str, Any]:
        """What is known of the library; the book of addresses is on the disk before any page is printed."""
        log, file = log_of(self._shop), self._shop.procedure_addresses_file
        given = orjson.dumps([[one.model_dump(mode="json") for one in log.rulings], log.told])
        outlines = [text for one in self._reads for text in (one.slug, one.sums.get(OUTLINE, ""))]
        total, known = self._store.memo(_KNOWN, "")
        if known is None or total != sum_of(given, file_sum(file), *outlines):
            before = {one["slug"] for one in known["library"]["shelved"]} if known else set()
            known = self._know(log.rulings, log.told)
            self._store.put_memos(_VERSIONS, {}, before - {one["slug"] for one in known["library"]["shelved"]})
            total = sum_of(given, file_sum(file), *outlines)
            self._store.put_memos(_KNOWN, {"": (total, orjson.dumps(known))})
        told: dict[str, Any] = known
        return told

    def _know(self, rulings: Sequence[Any], aside: Sequence[str]) -> dict[str, Any]:
        """The library, and what other pages are told of it, as the store keeps them."""
        file = self._shop.procedure_addresses_file
        book = read_book(file)
        kept = self._store.parts(OUTLINE)
        outlines = {one.slug: outline_in(one.slug, kept[one.slug]) for one in self._reads if one.slug in kept}
        studied = _Studied(self._store, {one.slug: one.sums[OUTLINE] for one in self._reads if one.slug in kept})
        library = library_of(tuple(outlines.values()), rulings, studied, book)
        studied.close()
        after = brought_up(book, library, tuple(outlines.values()))
        if after != book:
            write_book(file, after)
        known: dict[str, Any] = {
            "library": library,
            "warnings": (*library.lost, *aside),
            "plain": links_of(library, outlines),
            "steps": links_of(library, outlines, steps=True),
        }
        told: dict[str, Any] = orjson.loads(orjson.dumps(known))
        return told

    def _moved(self, library: Library, entries: Sequence[dict[str, Any]]) -> None:
        """The pages at former addresses."""
        targets = [(one, Link(**entry["link"])) for one, entry in zip(library.shelved, entries, strict=True)]
        for moved in library.moved:
            for name, page in moved_pages(moved, targets, self._settings):
                self._press.page(name, sum_of(orjson.dumps(page)), lambda page=page: self._renderer.library(page))  # type: ignore[misc]

    def _procedure(self, one: Shelved, stretches: Stretches, works: Mapping[str, str]) -> dict[str, Any]:
        """Its line in the list, as the store keeps it; its page and card are printed where it has any."""
        slugs = [ran.session for ran in one.ran]
        shared = orjson.dumps([stretches[slug] for slug in slugs])
        total = sum_of(orjson.dumps(one), shared, *(text for slug in slugs for text in (slug, works[slug])))
        name = page_name(one.slug) if one.has_page else f"{_KNOWN}#{one.slug}"
        entry, sums = self._press.files(name, total, lambda: self._made(one, stretches))
        if one.has_page:
            self.searched[place_of(one.slug)] = sums
        return entry  # type: ignore[no-any-return]

    def _made(self, one: Shelved, stretches: Stretches) -> tuple[Texts, list[Any]]:
        procedure = procedure_of(one, self._of([ran.session for ran in one.ran]), stretches)
        texts, parts = {}, {}
        if one.has_page:
            figures = figures_of(procedure)
            parts = search_parts(searched_procedure(procedure, figures))
            self._store.put_parts(place_of(one.slug), parts)
            texts[page_name(one.slug)] = self._renderer.library(procedure_page(procedure, self._settings, figures))
        if procedure.has_page and procedure.many:
            texts[every_name(one.slug)] = self._every(one, procedure, stretches)
        card = make_procedure_card(procedure, self._settings)
        if card is not None:
            texts[card_name(one.slug)] = self._renderer.card(card)
        entry = orjson.loads(orjson.dumps(entry_of(procedure)))
        return texts, [entry, {name: sum_of(data) for name, data in parts.items()}]

    def _every(self, one: Shelved, procedure: Procedure, stretches: Stretches) -> str:
        """The page of every version; those whose session stayed as it was are set already."""
        works = {read.slug: read.sums[WORK] for read in self._reads if WORK in read.sums}
        kept = self._store.memo(_VERSIONS, one.slug)[1] or {}
        keys = [
            sum_of(ran.session, works[ran.session], orjson.dumps([ran.steps, stretches[ran.session]]))
            for ran in one.ran
        ]
        versions = {
            key: kept.get(key) or self._renderer.version(version_in_full(version))
            for key, version in zip(keys, procedure.versions, strict=True)
        }
        self._store.put_memos(_VERSIONS, {one.slug: ("", orjson.dumps({key: str(of) for key, of in versions.items()}))})
        page = every_page(procedure, self._settings, [ready(versions[key]) for key in keys])
        return self._renderer.library(page)

    def _of(self, slugs: Sequence[str]) -> Mapping[str, SessionWork]:
        missing = [slug for slug in slugs if slug not in self._works]
        self._works.update((slug, work_in(kept)) for slug, kept in self._store.parts(WORK, missing).items())
        return self._works

    def _index(self, library: Library, entries: Sequence[dict[str, Any]]) -> str:
        listed = [(one, _entry().validate_python(entry)) for one, entry in zip(library.shelved, entries, strict=True)]
        return self._renderer.library(index_page(listed, self._settings))


class _Studied:
    """Knows what versions came to beside one another the last time, where neither they nor their order has changed."""

    def __init__(self, store: Store, sums: Mapping[str, str]) -> None:
        self._store = store
        self._sums = sums
        self._known = store.memos(_STUDY)
        self._asked: set[str] = set()
        self._fresh: dict[str, tuple[str, bytes]] = {}

    def __call__(self, ways: Ways, pinned: int | None) -> Study:
        """The same as `study`."""
        places = orjson.dumps([pinned, [steps for _, steps in ways]])
        total = sum_of(places, *(self._sums[course.slug] for course, _ in ways))
        self._asked.add(total)
        if total in self._known:
            return study_in(self._known[total][1])
        made = study(ways, pinned)
        self._fresh[total] = (total, orjson.dumps(made))
        return made

    def close(self) -> None:
        """Keep what was worked out, and forget what is asked for no more."""
        self._store.put_memos(_STUDY, self._fresh, self._known.keys() - self._asked)


@cache
def _entry() -> TypeAdapter[ProcedureEntry]:
    return TypeAdapter(ProcedureEntry)
