"""The page that searches the site, as its template is given it."""

from __future__ import annotations

from dataclasses import dataclass

from publish.context.site_page import InnerPage


@dataclass(frozen=True, slots=True)
class SearchPage(InnerPage):
    """The page with the question and what was found; a script fills it."""
