"""Makes the pages that stand at former addresses of procedures and bench cards: each leads to where that is now."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Protocol

from capture.shop import ShopSettings
from publish.addresses import absolute, address
from publish.context import Link
from publish.context.procedures import MovedPage
from publish.procedures.address_book import Kind
from publish.procedures.addressing import Moved
from publish.procedures.places import FOLDER, FOLDERS, ROOT, file_name


class Target(Protocol):
    """A procedure, as far as links to it depend on it."""

    @property
    def slug(self) -> str:
        """Name of its page."""

    @property
    def has(self) -> tuple[Kind, ...]:
        """What is published of it."""


Led = tuple[Target, Link]
"""A procedure and the link to it from the folder of procedures: to its page, or to where it was done once."""


def moved_pages(moved: Moved, targets: Sequence[Led], shop: ShopSettings) -> Iterator[tuple[str, MovedPage]]:
    """Name on the site and page of each; `targets` are all procedures in their order."""
    everything = Link("index.html", "Procedures") if targets else Link(f"{ROOT}index.html", shop.title)
    target, link = (None, everything) if moved.to is None else targets[moved.to]
    for kind in moved.had:
        folder, there = FOLDERS[kind], link
        if kind != "page":
            same = target is not None and kind in target.has
            there = Link(f"{address(target.slug)}.html" if target and same else f"../{link.href}", link.text)
        yield file_name(kind, moved.slug), _page(there, folder, shop)


def _page(to: Link, folder: str, shop: ShopSettings) -> MovedPage:
    """A page in that folder below the procedures."""
    root = f"../{ROOT}" if folder else ROOT
    home = absolute(shop.site_address, FOLDER)
    return MovedPage(
        title=shop.title,
        author=shop.author,
        licence=shop.licence,
        assets=f"{root}assets/",
        address=_straight(f"{home}{folder}{to.href.partition('#')[0]}") if home else None,
        front=Link(f"{root}index.html", shop.title),
        to=to,
    )


def _straight(web: str) -> str:
    """The address without steps upwards."""
    parts: list[str] = []
    for part in web.split("/"):
        if part == "..":
            parts.pop()
        else:
            parts.append(part)
    return "/".join(parts)
