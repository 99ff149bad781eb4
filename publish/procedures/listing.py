"""The list of procedures."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from capture.shop import ShopSettings
from publish.addresses import address
from publish.context import Link
from publish.context.procedures import ProcedureEntry, ProcedureIndex
from publish.library.works import folded
from publish.procedures.places import ROOT, web
from publish.procedures.procedure import Procedure
from publish.procedures.telling import film_time
from publish.wording import count


class Listed(Protocol):
    """A procedure, as far as its place in the list depends on it."""

    @property
    def slug(self) -> str:
        """Name of its page."""

    @property
    def name(self) -> str:
        """What it is called."""

    @property
    def pinned(self) -> int | None:
        """Place of the version that a person prefers."""

    @property
    def has_page(self) -> bool:
        """It has a page of its own."""


def index_page(listed: Sequence[tuple[Listed, ProcedureEntry]], shop: ShopSettings) -> ProcedureIndex:
    """The list of procedures."""
    having = sorted(
        (one for one in listed if one[0].has_page),
        key=lambda one: (one[0].pinned is None, -one[1].time.number, folded(one[0].name), one[0].slug),
    )
    once = sorted((one for one in listed if not one[0].has_page), key=lambda one: (folded(one[0].name), one[0].slug))
    return ProcedureIndex(
        title=shop.title,
        author=shop.author,
        licence=shop.licence,
        assets=f"{ROOT}assets/",
        address=web(shop, "index.html"),
        front=Link(f"{ROOT}index.html", shop.title),
        entries=tuple(entry for _, entry in having),
        once=tuple(entry for _, entry in once),
    )


def entry_of(one: Procedure) -> ProcedureEntry:
    """A procedure's line in the list: it leads to its page, or to the step of the one session that did it."""
    trades = dict.fromkeys(version.work.trade for version in one.versions if version.work.trade)
    steps = count(len(one.stages), "step")
    where = f"{one.versions[0].work.title}, {steps}" if one.sessions == 1 else ""
    return ProcedureEntry(
        link=Link(f"{address(one.slug)}.html" if one.has_page else _first_step(one), one.name),
        contents=where or f"{count(one.sessions, 'session')}, {steps}",
        trades=", ".join(trades),
        time=film_time(one),
        preferred=one.pinned is not None,
    )


def _first_step(one: Procedure) -> str:
    version = one.versions[0]
    return f"{version.work.href}#{version.steps[0].anchor}"
