"""Makes up the front page: every session, and what later sessions took back from earlier ones."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from markupsafe import Markup

from capture.shop import ShopSettings
from publish.addresses import SCHEMA_FILE, SESSION_HOME, absolute, address
from publish.all_errata import FILE as ERRATA_FILE
from publish.context import Entry, Erratum, FrontPage, Link, SessionPage, Shelf
from publish.errata import retractions
from publish.galley import Galley
from publish.library.works import Kin
from publish.page import Company
from publish.parts import PARTS
from publish.source import SessionSource
from publish.wording import count

_MOST_PAIRS = 2


def company_at(at: int, kin: Kin, links: Sequence[Link], errata: Sequence[tuple[Erratum, ...]]) -> Company:
    """The company of one session of a work; `links` and `errata` are of each of its sessions, oldest first."""
    return Company(
        history=(*links[:at], *links[at + 1 :]),
        later_errata=tuple(erratum for later in errata[at + 1 :] for erratum in later),
        work=Link(f"{SESSION_HOME}{kin.href}", kin.subject),
    )


def front_page(
    entries: tuple[Entry | Markup, ...],
    errata: tuple[Erratum | Markup, ...],
    has_errata: bool,
    shop: ShopSettings,
    shelf: Shelf,
) -> FrontPage:
    """The front page of these entries and errata, the newest first; `has_errata` where any session has one."""
    return FrontPage(
        title=shop.title,
        author=shop.author,
        licence=shop.licence,
        assets="assets/",
        address=absolute(shop.site_address),
        entries=entries,
        errata=errata,
        all_errata=Link(ERRATA_FILE, "All errata") if has_errata else None,
        shelf=shelf,
        schema=Link(SCHEMA_FILE, "What the fields of the records mean (JSON Schema)"),
    )


def entry_of(source: SessionSource, page: SessionPage) -> Entry:
    """A session in the list."""
    contents = (
        (len(page.stages), "step", "steps"),
        (sum(len(group.rows) for group in page.groups), "figure", "figures"),
        (len(page.errata), "erratum", "errata"),
    )
    return Entry(
        href=f"{address('sessions', source.slug)}/index.html",
        title=page.title,
        date=page.date,
        date_text=page.date_text,
        subject=page.subject,
        trade=page.trade,
        proof=page.proof,
        pairs=page.pairs[:_MOST_PAIRS],
        contents=tuple(count(number, one, many) for number, one, many in contents if number),
    )


def taken_back(source: SessionSource, shop: ShopSettings, to_sessions: str) -> tuple[Erratum, ...]:
    """What a session takes back of earlier ones; `to_sessions` leads from the page to the sessions' folder."""
    link = link_to(source, to_sessions)
    return retractions(Galley(source, shop, taken=PARTS.reserved()), link, link.href, to_sessions)


def concerning_all(errata: Iterable[Erratum]) -> tuple[Erratum, ...]:
    """Those that may concern any earlier session: what is known to be of one stands among that one's own errata."""
    return tuple(one for one in errata if one.earlier is None)


def link_to(source: SessionSource, to_sessions: str) -> Link:
    """A link to a session's page."""
    facts = source.record.session
    text = f"{facts.title} ({facts.date})" if facts.date else facts.title
    return Link(f"{to_sessions}{address(source.slug)}/index.html", text)
