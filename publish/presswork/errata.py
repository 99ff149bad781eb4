"""Brings the ledger of errata up to date, and prints the page of all errata, and the feeds."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from functools import cached_property

import orjson
from markupsafe import Markup

from capture.errors import ShopError
from capture.shop import Shop, ShopSettings
from publish.addresses import absolute
from publish.all_errata import FILE, make_errata_page, notice_of
from publish.feeds import ERRATA_FEED, SESSIONS_FEED, Announced, errata_feed, sessions_feed
from publish.ledger import Ledger, Listed, brought_up, read_ledger, write_ledger
from publish.presswork.parts import ERRATA, ready
from publish.presswork.press import Press
from publish.presswork.reading import Read
from publish.presswork.store import Store
from publish.presswork.sums import file_sum, sum_of
from publish.render import Renderer

_LEDGER, _ROWS = "ledger", "notices"


class Errata:
    """The errata of one edition; the ledger is on the disk before any page tells of it."""

    def __init__(self, shop: Shop, reads: Sequence[Read], left_out: frozenset[str], store: Store) -> None:
        """`left_out` are sessions that can't be read this time. Raises `ShopError` where the disk refuses."""
        self._path = shop.errata_file
        self._reads = reads
        self._store = store
        self._bring_up(left_out)

    @cached_property
    def _ledger(self) -> Ledger:
        return read_ledger(self._path)

    def print(self, settings: ShopSettings, renderer: Renderer, press: Press) -> None:
        """The page and its feed, which change with the ledger and with which sessions there are; the sessions' feed."""
        slugs = frozenset(one.slug for one in self._reads)
        press.page(
            FILE,
            sum_of(self._sum, *sorted(slugs)),
            lambda: self._page(settings, renderer, slugs),
        )
        if absolute(settings.site_address) is None:
            return
        press.page(ERRATA_FEED, self._sum, lambda: errata_feed(self._ledger, settings) or "")
        briefs = (one.brief for one in self._reads)
        announced = tuple(Announced(one.slug, one.title, one.date, one.bench) for one in briefs)
        told = sum_of(*(text for one in announced for text in one))
        press.page(SESSIONS_FEED, told, lambda: sessions_feed(announced, settings) or "")

    def _page(self, settings: ShopSettings, renderer: Renderer, published: frozenset[str]) -> str:
        rows = _Rows(self._store, renderer, published)
        page = make_errata_page(self._ledger, settings, rows)
        rows.close()
        return renderer.errata(page)

    def _bring_up(self, left_out: frozenset[str]) -> None:
        """Put into the ledger what the sessions say that have changed since it was written."""
        self._sum = file_sum(self._path)
        written, known = self._store.memo(_LEDGER, "")
        now = {one.slug: one.sums[ERRATA] for one in self._reads}
        state = {"sessions": now, "left_out": sorted(left_out)}
        before = known if known is not None and written == self._sum else {"sessions": {}, "left_out": None}
        if before == state:
            return
        same = {slug for slug, total in now.items() if before["sessions"].get(slug) == total}
        changed = [slug for slug in now if slug not in same]
        parts, today = self._store.parts(ERRATA, changed), date.today()
        found = (Listed(**one, first=today) for slug in changed for one in parts[slug])
        ledger = brought_up(self._ledger, tuple(found), left_out | same, today)
        try:
            write_ledger(self._path, ledger)
        except OSError as error:
            problem = f"can't be written ({error.strerror})"
            raise ShopError(self._path, problem, "make room, then publish again") from error
        self._ledger = ledger
        self._sum = file_sum(self._path)
        self._store.put_memos(_LEDGER, {"": (self._sum, orjson.dumps(state))})


class _Rows:
    """Sets the notices of the page; those that tell the same as the last time come out of the store."""

    def __init__(self, store: Store, renderer: Renderer, published: frozenset[str]) -> None:
        """`published` are the sessions that have a page to lead to."""
        self._store = store
        self._renderer = renderer
        self._published = published
        self._known: dict[str, str] = store.memo(_ROWS, "")[1] or {}
        self._now: dict[str, str] = {}

    def __call__(self, one: Listed, number: int) -> Markup:
        """The row of one erratum, by its number in the ledger."""
        there = (one.session in self._published, one.by in self._published)
        total = sum_of(one.model_dump_json(), f"{number} {there}")
        row = self._known.get(total)
        if row is None:
            row = str(self._renderer.notice(notice_of(one, number, self._published)))
        self._now[total] = row
        return ready(row)

    def close(self) -> None:
        """Keep the rows of this time."""
        if self._now.keys() != self._known.keys():
            self._store.put_memos(_ROWS, {"": ("", orjson.dumps(self._now))})
