"""All errata of a shop: gathered from its sessions, and made up for their page and feed."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import TypedDict

from markupsafe import Markup

from capture.shop import ShopSettings
from extract.record import Correction
from publish.addresses import absolute, address
from publish.anchors import Anchors
from publish.context import Elsewhere, ErrataPage, Link, Notice, SessionPage
from publish.dates import in_words
from publish.ledger import How, Ledger, Listed
from publish.moments import clock
from publish.parts import PARTS
from publish.source import SessionSource

FILE = "errata.html"
HOW: dict[How, str] = {
    "on_film": "said wrong and put right on the film",
    "proof": "found when the notes were proofed",
    "later_session": "taking back what an earlier session said",
    "put_right_later": "said wrong and put right in a later session",
}


def found_in(sources: tuple[SessionSource, ...], pages: tuple[SessionPage, ...], today: date) -> tuple[Listed, ...]:
    """Every erratum of the sessions, as it would be listed for the first time today; once each."""
    listed: dict[str, Listed] = {}
    for source, page in zip(sources, pages, strict=True):
        for correction, erratum in zip(source.record.corrections, page.errata, strict=True):
            one = Listed(
                session=source.slug,
                title=source.record.session.title,
                wrong=erratum.wrong,
                right=erratum.right,
                how=_how(correction),
                second=correction.start,
                anchor=erratum.anchor,
                first=today,
                **_by(correction),
            )
            listed.setdefault(one.key, one)
    return tuple(listed.values())


SetRow = Callable[[Listed, int], Markup]
"""Sets the notice of an erratum, whose number in the ledger is given."""


def make_errata_page(ledger: Ledger, shop: ShopSettings, set_row: SetRow) -> ErrataPage:
    """The page, the newest errata first."""
    web = absolute(shop.site_address)
    told = frozenset(ledger.told_once)
    return ErrataPage(
        title=shop.title,
        author=shop.author,
        licence=shop.licence,
        assets="assets/",
        address=f"{web}{FILE}" if web else None,
        front=Link("index.html", shop.title),
        standing=tuple(set_row(one, at) for at, one in _newest_first(ledger) if one in told),
        taken_out=tuple(set_row(one, at) for at, one in _newest_first(ledger) if one.out is not None),
    )


def _newest_first(ledger: Ledger) -> list[tuple[int, Listed]]:
    return sorted(enumerate(ledger.errata, 1), key=lambda pair: (pair[1].first, pair[0]), reverse=True)


class _By(TypedDict, total=False):
    by: str
    by_anchor: str
    by_title: str
    by_second: float
    proposed: bool


def _by(correction: Correction) -> _By:
    later = correction.ruling.later if correction.ruling else None
    if later is None:
        return {}
    anchor = Anchors(PARTS.reserved()).of("item", later.correction)
    return {
        "by": later.session, "by_anchor": anchor, "by_title": later.title, "by_second": later.start,
        "proposed": later.proposed,
    }  # fmt: skip


def _how(correction: Correction) -> How:
    if correction.source == "later_session":
        return "put_right_later"
    if correction.source == "proof":
        return "proof"
    return "later_session" if correction.scope == "earlier_session" else "on_film"


def _later(one: Listed, published: frozenset[str]) -> Elsewhere | None:
    if one.by not in published:
        return None
    href = f"{address('sessions', one.by)}/index.html#{one.by_anchor}"
    return Elsewhere(href, one.by_title, clock(one.by_second), one.proposed)


def notice_of(one: Listed, number: int, published: frozenset[str]) -> Notice:
    """What the page tells of an erratum; `published` are the sessions that have a page to lead to."""
    page = f"{address('sessions', one.session)}/index.html" if one.session in published else None
    whole = page if one.out is not None or page is None else f"{page}#{one.anchor}"
    return Notice(
        anchor=f"e-{number}",
        wrong=one.wrong,
        right=one.right,
        how=HOW[one.how],
        later=_later(one, published),
        session=one.title,
        href=whole,
        clock=clock(one.second),
        first=one.first.isoformat(),
        first_text=in_words(one.first.isoformat()),
        out_text=in_words(one.out.isoformat()) if one.out else "",
    )
