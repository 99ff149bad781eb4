"""Where the pages of the procedure library lie, from the front page's folder."""

from __future__ import annotations

from capture.shop import ShopSettings
from publish.addresses import absolute, address
from publish.procedures.address_book import Kind

FOLDER = "procedures"
INDEX = f"{FOLDER}/index.html"
"""The list."""
ROOT = "../"
"""From the list and the procedures' pages to the front page's folder."""
FOLDERS: dict[Kind, str] = {"page": "", "card": "cards/", "every": "every/"}
"""In that folder."""


def file_name(kind: Kind, slug: str) -> str:
    """A page of a procedure."""
    return f"{FOLDER}/{FOLDERS[kind]}{address(slug)}.html"


def page_name(slug: str) -> str:
    """A procedure's page."""
    return file_name("page", slug)


def card_name(slug: str) -> str:
    """Its bench card."""
    return file_name("card", slug)


def every_name(slug: str) -> str:
    """The page of every version."""
    return file_name("every", slug)


def web(shop: ShopSettings, name: str) -> str | None:
    """The full address of a page in the folder of procedures; null where the shop names no web address."""
    folder = absolute(shop.site_address, FOLDER)
    return f"{folder}{name}" if folder else None
