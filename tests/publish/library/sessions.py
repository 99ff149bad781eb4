"""Sessions of our own invention for the library: the Heron at the bench three times, and a tenor ukulele once."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from capture.files import write_atomic
from capture.shop import SessionSettings, Shop
from extract.record import Measure, Record, Remark
from publish.context import SessionPage
from publish.page import make_page
from publish.source import SessionSource
from tests.publish.in_memory import keep_company
from tests.publish.likeness import short_film
from tests.publish.session import SHOP, SLUG, source

HERON = "octave mandola, bridge reglued and saddle replaced"


def sessions() -> tuple[SessionSource, ...]:
    """Four sessions, oldest first."""
    return (
        source(),
        later("2032-03-02-the-heron-again", "The Heron again", "2032-03-02", HERON.upper(), 7),
        later("2032-11-20-ukulele", "A ukulele's action", "2032-11-20", "tenor ukulele", 6),
        later("2033-06-30-heron-third", "The Heron, strings", "2033-06-30", f"  {HERON} ", 5),
    )


def pages(of: tuple[SessionSource, ...]) -> tuple[SessionPage, ...]:
    """Their pages, as the site has them."""
    company = keep_company(of, SHOP)
    return tuple(make_page(one, SHOP, company[one.slug]) for one in of)


def later(slug: str, title: str, date: str, subject: str, sixtyfourths: int) -> SessionSource:
    """A session that found the treble action so high, and left it a sixty-fourth lower."""
    honest = source()
    facts = honest.record.session.model_copy(
        update={"title": title, "date": date, "subject": subject, "trade": "strings"}
    )
    record = Record(
        session=facts,
        measures=(action(sixtyfourths), action(sixtyfourths - 1, left=True), relief()),
        follow_ups=(Remark(cue=1, start=9.0, text="Look at the nut slots"),),
        doubts=(Remark(cue=2, start=14.0, text="Whether the neck has moved"),),
        tools=honest.record.tools[:1],
    )
    return SessionSource(slug, record, honest.transcript, recording="film.webm")


def action(sixtyfourths: int, *, left: bool = False) -> Measure:
    """The treble action in 64ths, as found or as left."""
    return Measure(
        id=f"m-action-{'left' if left else 'found'}",
        cue=3,
        start=25.0 + left,
        end=26.0 + left,
        quote=f"{sixtyfourths}/64",
        value=sixtyfourths / 64,
        unit="inch",
        unit_said=True,
        attribute="action",
        item="strings",
        where="treble side, 12th fret",
        phase="as_left" if left else "as_found",
        hedged=False,
        kind="length",
        display=f"{sixtyfourths}/64\u00a0in",
    )


def relief() -> Measure:
    """The relief, in millimetres."""
    change = {
        "id": "m-relief", "start": 30.0, "end": 31.0, "quote": "0.2 mm", "value": 0.2, "unit": "millimeter",
        "attribute": "relief", "item": "neck", "where": None, "display": "0.2\u00a0mm",
    }  # fmt: skip
    return action(5).model_copy(update=change)


def shop_of_sessions(folder: Path) -> Shop:
    """A shop with all sessions of the library's tests in it."""
    shop = Shop.open_or_create(folder / "shop", SHOP)
    film = short_film(folder / "film one.webm", seconds=2)
    for one in sessions():
        facts = one.record.session
        named = {"title": facts.title, "subject": facts.subject, "date": facts.date, "recording": str(film)}
        made = shop.add_session(SessionSettings.model_validate(named))
        write_atomic(made.record_file, one.record.to_json())
        if one.transcript is not None:
            write_atomic(made.transcript_file, one.transcript.to_json())
    return shop


def renamed(one: SessionSource, subject: str | None) -> SessionSource:
    """The session on another work."""
    facts = one.record.session.model_copy(update={"subject": subject})
    return replace(one, record=one.record.model_copy(update={"session": facts}))


__all__ = ["HERON", "SLUG", "action", "later", "pages", "relief", "renamed", "sessions", "shop_of_sessions"]
