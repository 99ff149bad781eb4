"""Makes up the page of a work: its sessions, what was measured again, what is open, what was taken back."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Literal

from capture.shop import ShopSettings
from publish.addresses import absolute
from publish.context import Erratum, Link, Row, SessionPage
from publish.context.library import Course, Matter, Sitting, WorkPage
from publish.errata import errata
from publish.galley import Galley
from publish.library.course import draw_course
from publish.library.statements import Statement, from_here, home_of, tell
from publish.library.works import FOLDER, Work, folded
from publish.parts import PARTS
from publish.source import SessionSource
from publish.wording import PHASES, sentence

ROOT = "../../"
"""From a work's page to the front page's folder."""


def make_work_page(
    work: Work,
    pages: Mapping[str, SessionPage],
    statements: Sequence[Statement],
    shop: ShopSettings,
    procedures: Sequence[Link] = (),
) -> WorkPage:
    """The page of a work; `pages` are session pages by slug, `statements` the standing figures of its sessions.

    `procedures` are what was done on it, as links from the front page's folder.
    """
    web = absolute(shop.site_address, FOLDER, work.slug)
    return WorkPage(
        title=shop.title,
        subject=work.subject[:1].upper() + work.subject[1:],
        author=shop.author,
        licence=shop.licence,
        assets=f"{ROOT}assets/",
        address=web,
        front=Link(f"{ROOT}index.html", shop.title),
        sittings=tuple(_sitting(source, pages[source.slug]) for source in work.sources),
        courses=_courses(statements),
        procedures=tuple(Link(f"{ROOT}{link.href}", link.text) for link in procedures),
        follow_ups=_matters(work, "follow-ups", pages),
        doubts=_matters(work, "doubts", pages),
        errata=tuple(
            one
            for source in work.sources
            for one in _errata(source, pages[source.slug], shop)
            # What is known to be of an earlier session is told there.
            if one.earlier is None
        ),
    )


def _sitting(source: SessionSource, page: SessionPage) -> Sitting:
    paired = {row.anchor for pair in page.pairs for row in (*pair.found, *pair.left)}
    return Sitting(
        href=f"{home_of(source, ROOT)}index.html",
        title=page.title,
        date=page.date,
        date_text=page.date_text,
        proof=page.proof,
        done=sentence(page.summary.done),
        pairs=page.pairs,
        found=_unpaired(page, PHASES["as_found"], paired),
        left=_unpaired(page, PHASES["as_left"], paired),
    )


def _unpaired(page: SessionPage, phase: str, paired: set[str]) -> tuple[Row, ...]:
    rows = (row for group in page.groups if group.phase == phase for row in group.rows)
    return tuple(row for row in rows if row.withdrawn is None and not row.difference and row.anchor not in paired)


def _courses(statements: Sequence[Statement]) -> tuple[Course, ...]:
    """Each attribute of an item at a place, of one kind, with more than one figure; rules of thumb measure nothing."""
    things: dict[tuple[str, str, str, str], list[Statement]] = {}
    for one in statements:
        measure = one.measure
        if measure.attribute and measure.kind and measure.phase != "general":
            key = (folded(measure.attribute), folded(measure.item), folded(measure.where), measure.kind)
            things.setdefault(key, []).append(one)
    again = [of for of in things.values() if len(of) > 1]
    return tuple(_course(number, of) for number, of in enumerate(again, 1))


def _course(number: int, statements: list[Statement]) -> Course:
    row = statements[0].row
    what = ", ".join(one for one in (row.what, row.part) if one)
    settled = [one for one in statements if one.settled]
    return Course(
        anchor=f"course-{number}",
        what=what,
        tellings=tuple(tell(one, ROOT) for one in statements),
        plot=draw_course(what, settled),
    )


def _matters(work: Work, part: Literal["follow-ups", "doubts"], pages: Mapping[str, SessionPage]) -> tuple[Matter, ...]:
    return tuple(
        Matter(
            text=remark.text,
            moment=from_here(remark.moment, home_of(source, ROOT)),
            session=Link(f"{home_of(source, ROOT)}index.html#{part}", pages[source.slug].title),
            date=pages[source.slug].date,
            date_text=pages[source.slug].date_text,
        )
        for source in work.sources
        for remark in (pages[source.slug].follow_ups if part == "follow-ups" else pages[source.slug].doubts)
    )


def _errata(source: SessionSource, page: SessionPage, shop: ShopSettings) -> tuple[Erratum, ...]:
    href = f"{home_of(source, ROOT)}index.html"
    text = f"{page.title} ({page.date})" if page.date else page.title
    return errata(Galley(source, shop, taken=PARTS.reserved()), Link(href, text), href, f"{ROOT}sessions/")
