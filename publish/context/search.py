"""The page that searches the site, as its template is given it."""

from __future__ import annotations

from dataclasses import dataclass

from publish.context.figures import Link


@dataclass(frozen=True, slots=True)
class SearchPage:
    """The page with the question and what was found; a script fills it."""

    title: str
    """Title of the shop's notes."""
    author: str
    """Who keeps the notes; may be empty."""
    licence: str
    """Licence of the notes; may be empty."""
    assets: str
    """Address of the shared assets' folder, with a slash behind."""
    address: str | None
    """The page's full address on the web; null where the shop has none."""
    front: Link
    """The front page."""
