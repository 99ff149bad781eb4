"""Atom feeds (RFC 4287): the shop's sessions, and its errata. Only a shop with an address on the web has them."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from datetime import UTC, date, datetime, time
from typing import NamedTuple
from urllib.parse import urlsplit

from feedgen.feed import FeedGenerator

from capture.shop import ShopSettings
from publish.addresses import absolute, address
from publish.all_errata import FILE as ERRATA_FILE
from publish.all_errata import HOW
from publish.ledger import Ledger, Listed
from publish.moments import clock

SESSIONS_FEED, ERRATA_FEED = "notes.atom", "errata.atom"
MOST = 100
"""Entries of a feed, the newest: who comes by now and then has met the others. RFC 4287 asks for no number."""
_LONG_AGO = datetime(1970, 1, 1, tzinfo=UTC)


class Announced(NamedTuple):
    """A session as the feed tells of it."""

    slug: str
    title: str
    date: str
    """ISO 8601; empty where unknown."""
    bench: str
    """What was on the bench, a sentence."""


def sessions_feed(sessions: Sequence[Announced], shop: ShopSettings) -> str | None:
    """The feed of sessions, given oldest first, the newest first; None where the shop has no address on the web."""
    web = absolute(shop.site_address)
    if web is None:
        return None
    feed = _feed(shop, web, SESSIONS_FEED, shop.title, f"{web}index.html")
    for one in sessions[-MOST:]:
        entry = feed.add_entry(order="prepend")
        entry.id(_tag(web, one.date or "1970-01-01", f"sessions/{one.slug}"))
        entry.title(one.title)
        entry.link(href=f"{web}{address('sessions', one.slug)}/index.html", rel="alternate")
        entry.summary(one.bench)
        entry.updated(_noon(one.date))
    feed.updated(max((_noon(one.date) for one in sessions), default=_LONG_AGO))
    return _written(feed)


def errata_feed(ledger: Ledger, shop: ShopSettings) -> str | None:
    """The feed of errata, the newest first, those taken out told as such; None where the shop has no address."""
    web = absolute(shop.site_address)
    if web is None:
        return None
    feed = _feed(shop, web, ERRATA_FEED, f"Errata: {shop.title}", f"{web}{ERRATA_FILE}")
    for number, one in _latest(ledger):
        entry = feed.add_entry(order="prepend")
        entry.id(_tag(web, one.first.isoformat(), f"errata/{hashlib.sha256(one.key.encode()).hexdigest()[:16]}"))
        entry.title(f"For “{one.wrong}” read “{one.right}”" if one.out is None else f"Taken out: “{one.wrong}”")
        entry.link(href=f"{web}{ERRATA_FILE}#e-{number}", rel="alternate")
        entry.summary(_told(one))
        entry.published(_noon(one.first.isoformat()))
        entry.updated(_noon((one.out or one.first).isoformat()))
    days = [one.out or one.first for one in ledger.errata]
    feed.updated(_noon(max(days).isoformat()) if days else _LONG_AGO)
    return _written(feed)


def _latest(ledger: Ledger) -> list[tuple[int, Listed]]:
    """With the number of each, in the order of their last change, as far as that is among the latest."""
    by_day = sorted(enumerate(ledger.errata, 1), key=lambda pair: (pair[1].out or pair[1].first, pair[0]))
    return sorted(by_day[-MOST:], key=lambda pair: pair[0])


def _feed(shop: ShopSettings, web: str, name: str, title: str, page: str) -> FeedGenerator:
    feed = FeedGenerator()
    feed.id(f"{web}{name}")
    feed.title(title)
    feed.link(href=f"{web}{name}", rel="self", type="application/atom+xml")
    feed.link(href=page, rel="alternate", type="text/html")
    feed.author(name=shop.author or shop.title)
    feed.generator("Spokeshave")
    if shop.licence:
        feed.rights(shop.licence)
    return feed


def _told(one: Listed) -> str:
    if one.out is not None:
        return f"This erratum to {one.title} was published and then taken out: it is in no record any more."
    if one.by:
        told = " The machine takes it so; no person has confirmed it." if one.proposed else ""
        return f"Said in {one.title} and put right in {one.by_title}, at {clock(one.by_second)}.{told}"
    return f"In {one.title}, {HOW[one.how]}."


def _tag(web: str, day: str, name: str) -> str:
    """A tag URI (RFC 4151): stays the same whatever address the site moves to later under the same name."""
    return f"tag:{urlsplit(web).hostname},{day}:{address(*name.split('/'))}"


def _noon(day: str) -> datetime:
    """Midday of a day, by which a feed can be sorted and two makings of it are the same."""
    return datetime.combine(date.fromisoformat(day), time(12), UTC) if day else _LONG_AGO


def _written(feed: FeedGenerator) -> str:
    return str(feed.atom_str(pretty=True), "utf-8") + "\n"
