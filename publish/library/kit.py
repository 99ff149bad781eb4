"""Makes up the page of tools and materials: each with the sessions and seconds that name it."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from capture.shop import ShopSettings
from publish.addresses import absolute
from publish.context import Link, Named, SessionPage
from publish.context.reference import KitPage, Thing, Use
from publish.library.statements import from_here, home_of
from publish.library.works import folded
from publish.source import SessionSource

FOLDER = "kit"
ROOT = "../"
"""From the page to the front page's folder."""


def make_kit(sources: Sequence[SessionSource], pages: Sequence[SessionPage], shop: ShopSettings) -> KitPage | None:
    """The page; None where no session names a tool or a material. `pages` are those of `sources`, oldest first."""
    tools = _things(sources, pages, lambda page: page.tools)
    materials = _things(sources, pages, lambda page: page.materials)
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


def _things(
    sources: Sequence[SessionSource],
    pages: Sequence[SessionPage],
    named: Callable[[SessionPage], tuple[Named, ...]],
) -> tuple[Thing, ...]:
    """What is named, by name; the same name in other letters is the same thing."""
    names: dict[str, str] = {}
    uses: dict[str, list[Use]] = {}
    for source, page in zip(sources, pages, strict=True):
        home = home_of(source, ROOT)
        link = Link(f"{home}index.html#kit", page.title)
        for one in named(page):
            key = folded(one.name)
            names.setdefault(key, one.name)
            moments = tuple(from_here(moment, home) for moment in one.moments)
            uses.setdefault(key, []).append(Use(link, page.date, page.date_text, moments))
    return tuple(Thing(names[key], tuple(uses[key])) for key in sorted(uses))
