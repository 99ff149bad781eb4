"""Relative addresses of the site's files; every part is quoted, so that no name can change where a link leads."""

from __future__ import annotations

from urllib.parse import quote

SESSION_HOME = "../../"
"""From a session page to the front page's folder."""
SCHEMA_FILE = "schema/spokeshave-record-1.json"
"""The JSON Schema of a record, from the front page's folder."""


def address(*parts: str) -> str:
    """A relative address of these path parts: `address("sessions", "a b")` is `sessions/a%20b`."""
    return "/".join(quote(part, safe="") for part in parts)


def absolute(site_address: str, *parts: str) -> str | None:
    """The full address under the shop's site address, with a slash behind; null where the shop names no web address."""
    if not site_address.startswith(("https://", "http://")):
        return None
    return site_address.rstrip("/") + "/" + "".join(quote(part, safe="") + "/" for part in parts)
