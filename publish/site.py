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
from publish.library import make_library, shelf_of
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
    rendered = [session_texts(one, page, renderer) for one, page in zip(gathered, pages, strict=True)]
    library = make_library(sources, pages, settings)
    shelved = {name: renderer.library(page) for name, page in library.items()}
    front = renderer.front(make_front(sources, pages, settings, shelf_of(library)))
    ledger = _ledger(shop, sources, pages)
    with staged(shop.public) as staging:
        staging.write("index.html", front)
        for one, texts in zip(gathered, rendered, strict=True):
            _write_session(staging, one, texts)
        for name, text in shelved.items():
            staging.write(name, text)
        staging.write(ERRATA_FILE, renderer.errata(make_errata_page(ledger, settings, frozenset(company))))
        _write_feed(staging, ERRATA_FEED, errata_feed(ledger, settings))
        _write_feed(staging, SESSIONS_FEED, sessions_feed(tuple(company), pages, settings))
        _write_shared(staging, settings.site_address)
    folders = tuple(shop.public / "sessions" / source.slug for source in sources)
    warnings = problems + tuple(warning for one in gathered for warning in one.warnings)
    return Published(shop.public / "index.html", tuple(folder / "index.html" for folder in folders), warnings)


def session_texts(one: Gathered, page: SessionPage, renderer: Renderer) -> dict[str, str]:
    """Every file of a session's published folder that is made of text, by name."""
    source = one.source
    texts = {
        "index.html": renderer.session(page),
        "record.json": source.record.to_json() + "\n",
        "chapters.vtt": chapters(source.record),
    }
    if source.transcript is not None:
        texts["captions.vtt"] = captions(page.spoken)
        texts["transcript.txt"] = plain_text(page.spoken)
        texts["transcript.json"] = source.transcript.to_json() + "\n"
    card = make_card(page, source.record)
    if card is not None:
        texts["card.html"] = renderer.card(card)
    return texts


def session_files(one: Gathered) -> dict[str, Path]:
    """Every other file of it: the recording and pictures, by name, where they lie."""
    files = {name: picture for picture, name in one.note.pictures}
    if one.recording is not None and one.source.recording is not None:
        files[one.source.recording] = one.recording
    return files


def _write_session(staging: Staging, one: Gathered, texts: dict[str, str]) -> None:
    home = f"sessions/{one.source.slug}"
    for name, text in texts.items():
        staging.write(f"{home}/{name}", text)
    for name, path in session_files(one).items():
        staging.place(f"{home}/{name}", path)


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
