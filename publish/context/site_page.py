"""What every page of the site is given, and every page but the front one."""

from __future__ import annotations

from dataclasses import dataclass

from publish.context.figures import Link


@dataclass(frozen=True, slots=True)
class SitePage:
    """A page of the shop's site."""

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


@dataclass(frozen=True, slots=True)
class InnerPage(SitePage):
    """A page behind the front page."""

    front: Link
    """The front page."""
