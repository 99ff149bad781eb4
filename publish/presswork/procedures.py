"""Prints the procedure library, and tells the other pages what it holds.

The procedures are found again only where a session, or the shop's log of rulings on them, has changed; then each page
that came out otherwise is printed anew.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import orjson

from capture.shop import Shop, ShopSettings
from publish.context import Card, Link
from publish.context.procedures import ProcedureIndex, ProcedurePage
from publish.presswork.parts import WORK
from publish.presswork.press import Press, Texts
from publish.presswork.reading import Read
from publish.presswork.store import Store
from publish.presswork.sums import sum_of
from publish.presswork.works import work_in
from publish.procedures import (
    INDEX,
    card_name,
    links_of,
    make_procedure_card,
    make_procedures,
    procedures_of_shop,
)
from publish.procedures.rulings.log import ProcedureLog
from publish.render import Renderer

_KNOWN = "procedures"
"""What is known of the library as a whole, under a name that no file has."""

Page = ProcedurePage | ProcedureIndex | Card


class Procedural:
    """The procedures of one edition."""

    def __init__(self, reads: Sequence[Read], shop: Shop, store: Store, renderer: Renderer, press: Press) -> None:
        self._reads = reads
        self._shop = shop
        self._store = store
        self._renderer = renderer
        self._press = press
        self._settings: ShopSettings = shop.settings
        self._made: tuple[dict[str, Page], dict[str, Any]] | None = None
        self._told: dict[str, Any] = {}

    def print(self) -> None:
        """Every page and bench card."""
        log = ProcedureLog.of(self._shop).read()
        given = orjson.dumps([one.model_dump(mode="json") for one in log.rulings])
        aside = orjson.dumps([(one.line, one.why) for one in log.aside])
        sums = (text for one in self._reads for text in (one.slug, one.sums.get(WORK, "")))
        self._told = self._press.files(_KNOWN, sum_of(given, aside, *sums), self._know)
        for name, total in self._told["pages"].items():
            self._press.page(name, total, lambda name=name: self._render(name))  # type: ignore[misc]

    @property
    def link(self) -> Link | None:
        """The list of procedures, from the front page; null where no session has a step."""
        return Link(INDEX, "Procedures") if INDEX in self._told["pages"] else None

    @property
    def warnings(self) -> tuple[str, ...]:
        """A line for each ruling, or line of the log, without effect."""
        return tuple(self._told["warnings"])

    def of(self, slug: str, root: str, *, steps: bool = False) -> tuple[Link, ...]:
        """The procedures that a session did; `root` leads from the page to the front page's folder."""
        listed = self._told["steps" if steps else "plain"].get(slug, ())
        return tuple(Link(f"{root}{one['href']}", one["text"]) for one in listed)

    def _know(self) -> tuple[Texts, dict[str, Any]]:
        pages, told = self._all()
        return {}, told | {"pages": {name: _sum(page) for name, page in pages.items()}}

    def _all(self) -> tuple[dict[str, Page], dict[str, Any]]:
        """Every page by name, and what other pages are told; found once."""
        if self._made is None:
            kept = self._store.parts(WORK)
            works = [work_in(kept[one.slug]) for one in self._reads if one.slug in kept]
            procedures, without_effect = procedures_of_shop(self._shop, works)
            pages: dict[str, Page] = dict(make_procedures(procedures, self._settings))
            for one in procedures.all:
                card = make_procedure_card(one, self._settings)
                if card is not None:
                    pages[card_name(one)] = card
            told = {
                "warnings": without_effect,
                "plain": _plain(links_of(procedures)),
                "steps": _plain(links_of(procedures, steps=True)),
            }
            self._made = pages, told
        return self._made

    def _render(self, name: str) -> str:
        page = self._all()[0][name]
        return self._renderer.card(page) if isinstance(page, Card) else self._renderer.library(page)


def _plain(links: Mapping[str, tuple[Link, ...]]) -> dict[str, list[dict[str, str]]]:
    return {slug: [{"href": one.href, "text": one.text} for one in of] for slug, of in links.items()}


def _sum(page: Page) -> str:
    return sum_of(orjson.dumps(page, default=str))
