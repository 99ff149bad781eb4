"""Makes up the page of tools and materials: each with the sessions and seconds that name it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Literal

from markupsafe import Markup

from capture.shop import ShopSettings
from publish.addresses import absolute
from publish.context import Link, SaidFor, SessionPage
from publish.context.reference import KitPage, Thing, Use
from publish.kit.same import same_thing, thing_key
from publish.library.statements import from_here, home_of
from publish.moments import Moment
from publish.source import SessionSource

FOLDER = "kit"
ROOT = "../"
"""From the page to the front page's folder."""
Sort = Literal["tool", "material"]
TOOL: Sort = "tool"
MATERIAL: Sort = "material"
Named = tuple[Sort, str, str, Use | Markup]
"""One thing in one session: tool or material, its name as it is compared and as it stands there, and its uses."""


def kit_page(named: Sequence[Named], shop: ShopSettings) -> KitPage | None:
    """The page of all that is named, session by session, oldest first; None where nothing is."""
    tools, materials = _things(named, TOOL), _things(named, MATERIAL)
    if not tools and not materials:
        return None
    return KitPage(
        title=shop.title,
        author=shop.author,
        licence=shop.licence,
        assets=f"{ROOT}assets/",
        address=absolute(shop.site_address, FOLDER),
        front=Link(f"{ROOT}index.html", shop.title),
        tools=tools,
        materials=materials,
    )


def uses_of(source: SessionSource, page: SessionPage) -> Iterator[tuple[Sort, str, str, Use]]:
    """What a session names, tools first."""
    home = home_of(source, ROOT)
    record = source.record
    by_hand = {one.name for one in (*record.tools, *record.materials) if one.said}
    link = Link(f"{home}index.html#kit", page.title)
    for sort, things in ((TOOL, page.tools), (MATERIAL, page.materials)):
        for one in things:
            otherwise = tuple(SaidFor(said.words, _from_here(said.moments, home)) for said in one.otherwise)
            use = Use(link, page.date, page.date_text, _from_here(one.moments, home), otherwise)
            yield sort, thing_key(one.name, by_hand=one.name in by_hand), one.name, use


def _from_here(moments: Iterable[Moment], home: str) -> tuple[Moment, ...]:
    return tuple(from_here(moment, home) for moment in moments)


def _things(named: Iterable[Named], sort: Sort) -> tuple[Thing, ...]:
    """What is named, by name; unless a person has ruled, a name in other letters or the plural is the same thing."""
    names: dict[str, str] = {}
    uses: dict[str, list[Use | Markup]] = {}
    for of, key, name, use in named:
        if of == sort:
            names.setdefault(key, name)
            uses.setdefault(key, []).append(use)
    order = sorted(uses, key=lambda key: (same_thing(names[key]), names[key]))
    return tuple(Thing(names[key], tuple(uses[key])) for key in order)
