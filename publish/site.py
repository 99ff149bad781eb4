"""Publishes a shop: reads what changed, checks it, prints it anew beside what still stands, swaps the site in."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

from filelock import FileLock, Timeout

from capture.shop import Shop, ShopSettings
from extract.record import record_schema
from publish.addresses import SCHEMA_FILE, absolute
from publish.errors import PublishBusyError, UnsettledError
from publish.kit import Names, log_of
from publish.kit.rulings.model import Said
from publish.presswork import Press, Store, StoreBrokenError, edition_of, opened, read_sessions
from publish.presswork.errata import Errata
from publish.presswork.figures import Figured
from publish.presswork.procedures import Procedural
from publish.presswork.search import print_search
from publish.presswork.sessions import print_sessions
from publish.presswork.stamps import Clock
from publish.presswork.store import FILE as STORE_FILE
from publish.presswork.sums import program, sum_of
from publish.presswork.whole import Whole
from publish.render import Renderer
from publish.staging import staged

ASSETS = Path(__file__).parent / "assets"


@dataclass(frozen=True, slots=True)
class Published:
    """What was published."""

    front: Path
    """The front page."""
    pages: tuple[Path, ...]
    """The session pages, oldest first."""
    warnings: tuple[str, ...]
    """What a person should know, a line each: sessions left out, rulings without effect, pictures not found, statements
    to settle; of the newest sessions first."""
    anew: int = 0
    """How many files were made anew; the others stood."""


def publish_shop(shop: Shop, *, strict: bool = False) -> Published:
    """Bring the site of a shop up to date, and swap it for the last one; what did not change is not made again.

    The site is byte for byte what it would be if all of it were made anew. A session that can't be read is left out
    with one line of warning. With `strict`, such a session or a statement that waits to be settled raises
    `UnsettledError` before anything is written. Raises `PublishError` where the disk refuses and `ShopError` where
    shop.toml can't be read; the last good site then stands.
    """
    lock = FileLock(shop.root / ".publish.lock")
    try:
        lock.acquire(timeout=0)
    except Timeout:
        raise PublishBusyError(shop.root) from None
    try:
        return _with_store(shop, strict, Clock(Path(lock.lock_file)))
    finally:
        lock.release()


def _with_store(shop: Shop, strict: bool, clock: Clock) -> Published:
    path = shop.root / STORE_FILE
    for last_try in (False, True):
        try:
            with opened(path) as store:
                return _publish(shop, strict, store, clock)
        except StoreBrokenError:
            # It only saves work: without it, everything is made anew.
            if last_try:
                raise
            path.unlink(missing_ok=True)
    raise AssertionError("the second try returned or raised")


def _publish(shop: Shop, strict: bool, store: Store, clock: Clock) -> Published:
    settings, renderer = shop.settings, Renderer()
    store.begin(edition_of(settings))
    kit = log_of(shop)
    names = Names.by(kit.rulings)
    reads, left_out, problems = read_sessions(shop, settings, store, renderer, clock, names)
    unsettled = tuple(one.brief.unsettled for one in reversed(reads) if one.brief.unsettled)
    if strict and (problems or unsettled):
        raise UnsettledError((*problems, *unsettled))
    ledger = Errata(shop, reads, left_out, store)
    with staged(shop.public) as staging:
        press = Press(staging, store, shop.public)
        procedures = Procedural(reads, shop, store, renderer, press)
        procedures.print()
        figures = Figured(reads, settings, store, renderer, press)
        figures.print()
        print_sessions(reads, store, renderer, press, staging, procedures, figures)
        Whole(reads, settings, store, renderer, press, procedures, figures).print()
        print_search(reads, settings, store, renderer, press, procedures)
        ledger.print(settings, renderer, press)
        _print_shared(press, settings)
    press.close()
    store.commit()
    folders = tuple(shop.public / "sessions" / one.slug for one in reads)
    told = (warning for one in reversed(reads) for warning in one.brief.warnings)
    said = (Said(sort=sort, name=name) for one in reads for sort, name in one.brief.said)
    of_kit = (*names.without_effect(said), *kit.told)
    warnings = (*problems, *procedures.warnings, *of_kit, *told, *unsettled)
    return Published(shop.public / "index.html", tuple(one / "index.html" for one in folders), warnings, press.anew)


def _print_shared(press: Press, settings: ShopSettings) -> None:
    """Style, script and schema: they change with the program and the shop's settings alone."""
    for asset in sorted(path for path in ASSETS.rglob("*") if path.is_file()):
        press.page(f"assets/{asset.relative_to(ASSETS).as_posix()}", program(), asset.read_bytes)
    press.page(SCHEMA_FILE, sum_of(program(), settings.site_address), lambda: _schema(settings))


def _schema(settings: ShopSettings) -> str:
    schema = record_schema()
    web = absolute(settings.site_address)
    if web is not None:
        schema = {"$id": web + SCHEMA_FILE, **schema}
    return json.dumps(schema, indent=1, ensure_ascii=False) + "\n"
