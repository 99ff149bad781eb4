"""Publishes a shop: gathers every session, checks what was gathered, writes the site, swaps it in."""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from filelock import FileLock, Timeout

from capture.errors import ShopError
from capture.shop import Shop
from extract.record import record_schema
from publish.addresses import SCHEMA_FILE, absolute
from publish.all_errata import FILE as ERRATA_FILE
from publish.all_errata import found_in, make_errata_page
from publish.captions import captions, chapters, plain_text
from publish.card import make_card
from publish.context import SessionPage
from publish.errors import PublishBusyError, UnsettledError
from publish.feeds import ERRATA_FEED, SESSIONS_FEED, errata_feed, sessions_feed
from publish.front import keep_company, make_front
from publish.gather import Gathered, gather
from publish.ledger import Ledger, brought_up, read_ledger, write_ledger
from publish.page import make_page
from publish.render import Renderer
from publish.source import SessionSource
from publish.staging import Staging, staged

ASSETS = Path(__file__).parent / "assets"


@dataclass(frozen=True, slots=True)
class Published:
    """What was published."""

    front: Path
    """The front page."""
    pages: tuple[Path, ...]
    """The session pages, oldest first."""
    warnings: tuple[str, ...]
    """What a person should know, a line each: sessions left out, statements to settle, pictures not found."""


def publish_shop(shop: Shop, *, strict: bool = False) -> Published:
    """Make the site of a shop anew and swap it for the last one.

    A session that can't be read is left out with one line of warning. With `strict`, such a session or a statement that
    waits to be settled raises `UnsettledError` before anything is written. Raises `PublishError` where the disk refuses
    and `ShopError` where shop.toml can't be read; the last good site then stands.
    """
    lock = FileLock(shop.root / ".publish.lock")
    try:
        lock.acquire(timeout=0)
    except Timeout:
        raise PublishBusyError(shop.root) from None
    try:
        return _publish(shop, strict)
    finally:
        lock.release()


def _publish(shop: Shop, strict: bool) -> Published:
    settings = shop.settings
    gathered, problems = gather(shop)
    sources = tuple(one.source for one in gathered)
    company = keep_company(sources, settings)
    pages = tuple(make_page(source, settings, company[source.slug]) for source in sources)
    problems += tuple(
        f"{one.source.slug}: {page.proof.text}"
        for one, page in zip(gathered, pages, strict=True)
        if page.proof.state == "unsettled"
    )
    if strict and problems:
        raise UnsettledError(problems)
    renderer = Renderer()
    rendered = [renderer.session(page) for page in pages]
    cards = [make_card(page, source.record) for source, page in zip(sources, pages, strict=True)]
    printed = [None if card is None else renderer.card(card) for card in cards]
    front = renderer.front(make_front(sources, pages, settings))
    ledger = _ledger(shop, sources, pages)
    with staged(shop.public) as staging:
        staging.write("index.html", front)
        for one, page, html, card in zip(gathered, pages, rendered, printed, strict=True):
            _write_session(staging, one, page, html)
            if card is not None:
                staging.write(f"sessions/{one.source.slug}/card.html", card)
        staging.write(ERRATA_FILE, renderer.errata(make_errata_page(ledger, settings, frozenset(company))))
        _write_feed(staging, ERRATA_FEED, errata_feed(ledger, settings))
        _write_feed(staging, SESSIONS_FEED, sessions_feed(tuple(company), pages, settings))
        _write_shared(staging, settings.site_address)
    folders = tuple(shop.public / "sessions" / source.slug for source in sources)
    warnings = problems + tuple(warning for one in gathered for warning in one.warnings)
    return Published(shop.public / "index.html", tuple(folder / "index.html" for folder in folders), warnings)


def _write_session(staging: Staging, one: Gathered, page: SessionPage, html: str) -> None:
    source = one.source
    home = f"sessions/{source.slug}"
    staging.write(f"{home}/index.html", html)
    staging.write(f"{home}/record.json", source.record.to_json() + "\n")
    staging.write(f"{home}/chapters.vtt", chapters(source.record))
    if source.transcript is not None:
        staging.write(f"{home}/captions.vtt", captions(page.spoken))
        staging.write(f"{home}/transcript.txt", plain_text(page.spoken))
        staging.write(f"{home}/transcript.json", source.transcript.to_json() + "\n")
    if one.recording is not None:
        staging.place(f"{home}/{source.recording}", one.recording)
    for picture, name in one.note.pictures:
        staging.place(f"{home}/{name}", picture)


def _ledger(shop: Shop, sources: tuple[SessionSource, ...], pages: tuple[SessionPage, ...]) -> Ledger:
    """The ledger of errata, brought up to date and on the disk before any page tells of it."""
    path, today = shop.errata_file, date.today()
    left_out = frozenset(one.slug for one in shop.sessions()) - {one.slug for one in sources}
    ledger = brought_up(read_ledger(path), found_in(sources, pages, today), left_out, today)
    try:
        write_ledger(path, ledger)
    except OSError as error:
        raise ShopError(path, f"can't be written ({error.strerror})", "make room, then publish again") from error
    return ledger


def _write_feed(staging: Staging, name: str, feed: str | None) -> None:
    if feed is not None:
        staging.write(name, feed)


def _write_shared(staging: Staging, site_address: str) -> None:
    for asset in sorted(ASSETS.iterdir()):
        staging.write(f"assets/{asset.name}", asset.read_bytes())
    schema = record_schema()
    web = absolute(site_address)
    if web is not None:
        schema = {"$id": web + SCHEMA_FILE, **schema}
    staging.write(SCHEMA_FILE, json.dumps(schema, indent=1, ensure_ascii=False) + "\n")
