"""A shop of four invented sessions on disk, for the pages of the procedure library."""

from __future__ import annotations

from pathlib import Path

from click.testing import CliRunner

from capture.files import write_atomic
from capture.shop import SessionSettings, Shop
from desk.cli import spokeshave
from tests.publish.procedures.invented import BRIDGE, SADDLE, SHOP, source, temperature


def shop_of_bridges(folder: Path, film: Path | None = None) -> Shop:
    """Three bridges are glued and two saddle slots cut."""
    made = Shop.open_or_create(folder / "shop", SHOP)
    jobs = ((BRIDGE[0],), (BRIDGE[1], SADDLE[0]), (BRIDGE[2],), (SADDLE[1],))
    for at, job in enumerate(jobs, 1):
        one = source(f"2031-0{at}-01-job{at}", *job, measures=[temperature(f"j{at}", 140.0 + 10 * at)])
        facts = one.record.session
        named = {"title": facts.title, "subject": facts.subject, "date": facts.date, "trade": "strings"}
        named |= {"recording": str(film)} if film else {}
        session = made.add_session(SessionSettings.model_validate(named))
        write_atomic(session.record_file, one.record.to_json())
    return made


def shop_of_many(folder: Path, number: int, film: Path | None = None) -> Shop:
    """A bridge is glued so many times, in three ways, at another heat each time."""
    made = Shop.open_or_create(folder / "shop", SHOP)
    for at in range(number):
        _add(made, at, BRIDGE[at % len(BRIDGE)], film)
    return made


def _add(shop: Shop, at: int, job: tuple[str, ...], film: Path | None) -> None:
    slug = f"{2031 + at // 12}-{at % 12 + 1:02d}-01-job{at}"
    one = source(slug, job, measures=[temperature(f"j{at}", 140.0 + at)])
    facts = one.record.session
    named = {"title": facts.title, "subject": facts.subject, "date": facts.date, "trade": "strings"}
    named |= {"recording": str(film)} if film else {}
    session = shop.add_session(SessionSettings.model_validate(named))
    write_atomic(session.record_file, one.record.to_json())


def run(shop: Shop, *words: str, code: int = 0) -> str:
    """`spokeshave procedure`, which must leave with this exit code; what it said."""
    given = CliRunner().invoke(spokeshave, ["procedure", *words, "--shop", str(shop.root)])
    assert given.exit_code == code, given.output
    return given.output
