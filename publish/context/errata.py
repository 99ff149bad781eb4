"""The page of all errata of a shop, as its template is given it."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from publish.context.figures import Elsewhere
from publish.context.site_page import InnerPage


@dataclass(frozen=True, slots=True)
class Notice:
    """One erratum of the shop."""

    anchor: str
    """Id on this page."""
    wrong: str
    """As said."""
    right: str
    """What to read instead."""
    how: str
    """How it was found, a phrase."""
    later: Elsewhere | None
    """The later session that put it right; null where none did."""
    session: str
    """Title of the session."""
    href: str | None
    """Where it stands on the session's page; null where that page is gone."""
    clock: str
    """When it was taken back, in that recording."""
    first: str
    """ISO 8601 day on which it was first published."""
    first_text: str
    """That day in words."""
    out_text: str
    """The day on which it was taken out, in words; empty while it stands."""


@dataclass(frozen=True, slots=True)
class ErrataPage(InnerPage):
    """Everything on the page of errata."""

    standing: tuple[Markup, ...]
    """Notices of errata that stand, set already, the newest first."""
    taken_out: tuple[Markup, ...]
    """Notices of errata that were published and are in no record any more, the newest first."""
