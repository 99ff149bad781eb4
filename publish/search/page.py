"""Makes up the page that searches the site."""

from __future__ import annotations

from capture.shop import ShopSettings
from publish.addresses import absolute
from publish.context import Link
from publish.context.search import SearchPage
from publish.search.files import FOLDER

ROOT = "../"
"""From the page to the front page's folder."""


def page_of(shop: ShopSettings) -> SearchPage:
    """The page."""
    return SearchPage(
        title=shop.title,
        author=shop.author,
        licence=shop.licence,
        assets=f"{ROOT}assets/",
        address=absolute(shop.site_address, FOLDER),
        front=Link(f"{ROOT}index.html", shop.title),
    )
