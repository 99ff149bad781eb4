"""Prints the page of all errata, and the feeds."""

from __future__ import annotations

from collections.abc import Sequence

from capture.shop import ShopSettings
from publish.addresses import absolute
from publish.all_errata import FILE, make_errata_page
from publish.feeds import ERRATA_FEED, SESSIONS_FEED, Announced, errata_feed, sessions_feed
from publish.ledger import Ledger
from publish.presswork.press import Press
from publish.presswork.reading import Read
from publish.presswork.sums import sum_of
from publish.render import Renderer


def print_errata(
    reads: Sequence[Read], ledger: Ledger, settings: ShopSettings, renderer: Renderer, press: Press
) -> None:
    """The page and its feed change with the ledger and with which sessions have a page, the other feed with these."""
    slugs = frozenset(one.slug for one in reads)
    listed = ledger.model_dump_json()
    total = sum_of(listed, *sorted(slugs))
    press.page(FILE, total, lambda: renderer.errata(make_errata_page(ledger, settings, slugs)))
    if absolute(settings.site_address) is None:
        return
    press.page(ERRATA_FEED, sum_of(listed), lambda: errata_feed(ledger, settings) or "")
    briefs = (one.brief for one in reads)
    announced = tuple(Announced(one.slug, one.title, one.date, one.bench) for one in briefs)
    told = sum_of(*(text for one in announced for text in one))
    press.page(SESSIONS_FEED, told, lambda: sessions_feed(announced, settings) or "")
