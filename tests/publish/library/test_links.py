"""No link of the whole site is dead: every address leads to a file, and every anchor to a place on it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from urllib.parse import unquote, urlsplit
from xml.etree import ElementTree as ET

import html5lib
import pytest

from publish import publish_shop
from tests.publish.library.sessions import shop_of_sessions

PLACES = (".html", ".svg")
"""Of these a fragment names an id; of a film it names seconds."""


@cache
def read(path: Path) -> tuple[frozenset[str], tuple[str, ...]]:
    """Ids and addresses on a page; the parser is strict and raises at the first error against the HTML standard."""
    tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(path.read_text(encoding="utf-8"))
    ids = [element.attrib["id"] for element in tree.iter() if "id" in element.attrib]
    assert len(set(ids)) == len(ids), f"{path}: an id stands twice"
    named = (
        (element, name)
        for element in tree.iter()
        for name in ("href", "src", "poster", "action")
        if name in element.attrib
    )
    return frozenset(ids), tuple(
        element.attrib[name] for element, name in named if element.attrib.get("rel") != "canonical"
    )


def places(target: Path) -> frozenset[str]:
    """What a fragment may name: the ids of a page or a drawing."""
    if target.suffix == ".svg":
        return frozenset(one.attrib["id"] for one in ET.parse(target).iter() if "id" in one.attrib)  # noqa: S314
    return read(target)[0]


def dead(site: Path) -> Iterator[str]:
    """Each address of the site that leads nowhere."""
    for page in sorted(site.rglob("*.html")):
        for href in read(page)[1]:
            parts = urlsplit(href)
            if parts.scheme or parts.netloc:
                yield f"{page.relative_to(site)}: {href} leaves the site"
                continue
            target = (page.parent / unquote(parts.path)).resolve() if parts.path else page
            if not target.is_file() or not target.is_relative_to(site.resolve()):
                yield f"{page.relative_to(site)}: {href}"
            elif parts.fragment and target.suffix in PLACES and unquote(parts.fragment) not in places(target):
                yield f"{page.relative_to(site)}: {href} (no such place)"


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    shop = shop_of_sessions(tmp_path_factory.mktemp("library"))
    publish_shop(shop)
    return shop.public


def test_every_address_and_anchor_of_the_site_leads_somewhere(site: Path) -> None:
    assert list(dead(site)) == []


def test_every_page_of_the_site_is_reached_from_the_front_page(site: Path) -> None:
    reached, waiting = set(), [(site / "index.html").resolve()]
    while waiting:
        page = waiting.pop()
        if page in reached or page.suffix != ".html":
            continue
        reached.add(page)
        waiting.extend(
            (page.parent / unquote(urlsplit(href).path)).resolve() for href in read(page)[1] if urlsplit(href).path
        )
    assert reached == {path.resolve() for path in site.rglob("*.html")}


def test_a_dead_link_would_be_found(tmp_path: Path) -> None:
    page = "<!DOCTYPE html><html><head><title>a</title></head><body><a href='{}'>a</a></body></html>"
    (tmp_path / "index.html").write_text(page.format("gone.html"), encoding="utf-8")
    (tmp_path / "other.html").write_text(page.format("index.html#gone"), encoding="utf-8")
    assert len(list(dead(tmp_path))) == 2
