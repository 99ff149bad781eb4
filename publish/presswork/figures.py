"""Prints the reference figures: the page of each thing that is measured often enough, their list, and the drawings that
the sessions' pages show; tells these pages which drawings there are.

Page and drawing of a thing are made anew where a session's figures of that thing changed. A session's page is made anew
only where what it is told of a thing changed (`publish.library.comparing`).
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Any

import orjson
from pydantic import TypeAdapter

from capture.shop import ShopSettings
from publish.context import Link
from publish.context.reference import ReferenceEntry
from publish.library.comparing import Compared, compared, plot_file
from publish.library.reference import FOLDER, Key, Subject, names_of, reference_entry, reference_index, reference_page
from publish.library.usual import bands_for
from publish.library.works import folded
from publish.presswork.parts import Cited, cited, part_of, ready
from publish.presswork.press import Press, Texts
from publish.presswork.reading import Read
from publish.presswork.store import Store
from publish.presswork.sums import sum_of
from publish.render import Renderer

INDEX = f"{FOLDER}/index.html"


class Figured:
    """The reference figures of one edition."""

    def __init__(
        self, reads: Sequence[Read], shop: ShopSettings, store: Store, renderer: Renderer, press: Press
    ) -> None:
        self._reads = reads
        self._shop = shop
        self._store = store
        self._renderer = renderer
        self._press = press
        self._compared: dict[Key, Compared] = {}
        self._sums: dict[Key, str] = {}
        self._listed = False

    @property
    def link(self) -> Link | None:
        """Their list, from the front page's folder; None where there is none."""
        return Link(INDEX, "Reference figures") if self._listed else None

    def of(self, read: Read) -> tuple[tuple[Key, Compared], ...]:
        """The drawings of what a session measured."""
        keys = (one.key for one in read.brief.citings)
        return tuple((key, self._compared[key]) for key in keys if key in self._compared)

    def sums(self, read: Read) -> tuple[str, ...]:
        """Another one where the page of a session is told something else of what it measured."""
        keys = (one.key for one in read.brief.citings)
        return tuple(self._sums[key] for key in keys if key in self._sums)

    def print(self) -> None:
        """All pages and drawings."""
        sums: dict[Key, list[str]] = {}
        trades: dict[Key, dict[str, None]] = {}
        for one in self._reads:
            for citing in one.brief.citings:
                sums.setdefault(citing.key, []).extend((one.slug, citing.sum))
                trades.setdefault(citing.key, {})[folded(one.brief.trade)] = None
        spoken = (
            (citing.key, one.slug) for one in self._reads for citing in one.brief.citings for _ in range(citing.number)
        )
        named = names_of(spoken)
        lines = [self._thing(key, slug, sum_of(slug, *sums[key])) for key, slug in named.items()]
        for key, of in trades.items():
            if key not in named and bands_for(of, *key):
                self._drawing(key, sum_of(*sums[key]))
        self._listed = bool(lines)
        if lines:
            listed = tuple(_entry().validate_python(line) for line in lines)
            made = lambda: self._renderer.library(reference_index(listed, self._shop))  # noqa: E731
            self._press.page(INDEX, sum_of(orjson.dumps(lines)), made)

    def _thing(self, key: Key, slug: str, total: str) -> dict[str, Any]:
        """The page of a thing with its drawing; gives its line in the list, as the store keeps it."""
        name = f"{FOLDER}/{slug}.html"

        def make() -> tuple[Texts, dict[str, Any]]:
            statements = self._cited(key)
            subject = Subject(slug, *key, statements)
            rows = ready("".join(one.row for one in statements))
            page = reference_page(subject, self._shop, rows)
            drawn, told = self._drawn(subject, name)
            entry = reference_entry(subject, page)
            return {name: self._renderer.library(page), **drawn}, orjson.loads(orjson.dumps([entry, told]))

        line, told = self._press.files(name, total, make)
        self._know(key, told)
        return line  # type: ignore[no-any-return]

    def _drawing(self, key: Key, total: str) -> None:
        """The drawing of a thing that has a usual range but no page."""

        def make() -> tuple[Texts, Any]:
            drawn, told = self._drawn(Subject("", *key, self._cited(key)), None)
            return drawn, orjson.loads(orjson.dumps(told))

        self._know(key, self._press.files(plot_file(key), total, make))

    def _cited(self, key: Key) -> tuple[Cited, ...]:
        found = self._store.parts(part_of(key))
        kept = (found[one.slug] for one in self._reads if one.slug in found)
        return tuple(one for part in kept for one in cited(part))

    def _drawn(self, subject: Subject, page: str | None) -> tuple[Texts, Compared | None]:
        both = compared(subject, page)
        if both is None:
            return {}, None
        drawing, told = both
        return {told.plot: self._renderer.drawing(drawing)}, told

    def _know(self, key: Key, told: Any) -> None:
        if told is not None:
            self._compared[key] = _told().validate_python(told)
            self._sums[key] = sum_of(*key, orjson.dumps(told))


@cache
def _entry() -> TypeAdapter[ReferenceEntry]:
    return TypeAdapter(ReferenceEntry)


@cache
def _told() -> TypeAdapter[Compared]:
    return TypeAdapter(Compared)
