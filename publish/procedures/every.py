"""The page of every version of a procedure that was done often: each in full, the newest first.

A version is set once and kept while its session stays as it is; the page puts them together.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from markupsafe import Markup

from capture.shop import ShopSettings
from publish.addresses import address
from publish.context import Link
from publish.context.procedures import CautionOver, EveryPage, FullStep, Place, VersionInFull
from publish.moments import Moment
from publish.procedures.places import FOLDERS, ROOT, web
from publish.procedures.procedure import Procedure, VersionDone
from publish.procedures.telling import cautions_elsewhere, cautions_within, steps_in_full, version_told
from publish.wording import PHASES, STANDING_CAUTION, count

_BACK = "../"
"""From this page's folder to that of the procedures' pages, from which the links of a version lead."""


def version_in_full(version: VersionDone) -> VersionInFull:
    """A version for the page of every version; whether a person prefers it stands on the procedure's page."""
    told = version_told(version, preferred=False)
    return VersionInFull(
        anchor=f"v-{version.work.slug}",
        told=replace(told, session=_link(told.session), moment=_moment(told.moment)),
        steps=tuple(_step(step) for step in steps_in_full(version)),
        loose=tuple(
            (PHASES[one.measure.phase], replace(one.row, moment=_moment(one.row.moment))) for one in version.loose
        ),
        href=f"{_BACK}{version.work.href}",
    )


def every_page(one: Procedure, shop: ShopSettings, versions: Sequence[Markup]) -> EveryPage:
    """The page; `versions` are set already, oldest first."""
    root = f"{_BACK}{ROOT}"
    cautions = (*cautions_within(one, most=False), *cautions_elsewhere(one, most=False))
    return EveryPage(
        title=shop.title,
        name=one.name,
        author=shop.author,
        licence=shop.licence,
        assets=f"{root}assets/",
        address=web(shop, f"{FOLDERS['every']}{address(one.slug)}.html"),
        front=Link(f"{root}index.html", shop.title),
        procedure=Link(f"{_BACK}{address(one.slug)}.html", one.name),
        done=f"Done in {count(one.sessions, 'session')}",
        standing_caution=STANDING_CAUTION,
        cautions=tuple(_caution(caution) for caution in cautions),
        versions=tuple(reversed(versions)),
    )


def _step(step: FullStep) -> FullStep:
    rows = tuple(replace(row, moment=_moment(row.moment)) for row in step.rows)
    return replace(step, href=f"{_BACK}{step.href}", moment=_moment(step.moment), rows=rows)


def _caution(caution: CautionOver) -> CautionOver:
    return replace(caution, at=tuple(Place(_link(of.session), _moment(of.moment)) for of in caution.at))


def _link(link: Link) -> Link:
    return replace(link, href=f"{_BACK}{link.href}")


def _moment(moment: Moment) -> Moment:
    return moment if moment.href is None else replace(moment, href=f"{_BACK}{moment.href}")
