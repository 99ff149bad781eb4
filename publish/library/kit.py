"""Makes up the page of tools and materials: each with the sessions and seconds that name it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Literal

from markupsafe import Markup

from capture.shop import ShopSettings
from extract.roots import root
from publish.addresses import absolute
from publish.context import Link, SessionPage
from publish.context.reference import KitPage, Thing, Use
from publish.library.statements import from_here, home_of
from publish.library.works import folded
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
    link = Link(f"{home}index.html#kit", page.title)
    for sort, things in ((TOOL, page.tools), (MATERIAL, page.materials)):
        for one in things:
            moments = tuple(from_here(moment, home) for moment in one.moments)
            yield sort, same_thing(one.name), one.name, Use(link, page.date, page.date_text, moments)


def same_thing(name: str) -> str:
    """A name as it is compared: "Cam clamps" and "cam clamp" are one thing."""
    return " ".join(root(word) for word in folded(name).split())


def _things(named: Iterable[Named], sort: Sort) -> tuple[Thing, ...]:
    """What is named, by name; the same name in other letters or in the plural is the same thing."""
    names: dict[str, str] = {}
    uses: dict[str, list[Use | Markup]] = {}
    for of, key, name, use in named:
        if of == sort:
            names.setdefault(key, name)
            uses.setdefault(key, []).append(use)
    return tuple(Thing(names[key], tuple(uses[key])) for key in sorted(uses))
