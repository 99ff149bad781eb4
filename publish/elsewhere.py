"""Leads from one session's page to a statement of another: to where it was taken back, or to where it was said."""

from __future__ import annotations

from dataclasses import replace
from typing import Protocol

from extract.record import Earlier, Later
from publish.addresses import address
from publish.anchors import Anchors
from publish.context import Elsewhere
from publish.moments import clock
from publish.parts import PARTS


class _There(Protocol):
    @property
    def session(self) -> str: ...
    @property
    def title(self) -> str: ...
    @property
    def date(self) -> str | None: ...
    @property
    def start(self) -> float: ...
    @property
    def proposed(self) -> bool: ...


def later_than(later: Later | None, to_sessions: str) -> Elsewhere | None:
    """Where a later session takes a statement back; `to_sessions` leads from the page to the folder of sessions."""
    return None if later is None else _elsewhere(later, later.correction, to_sessions)


def earlier_than(earlier: Earlier | None, to_sessions: str) -> Elsewhere | None:
    """Where the statement stands that is taken back."""
    if earlier is None:
        return None
    return replace(_elsewhere(earlier, earlier.item, to_sessions), said=earlier.quote)


def _elsewhere(there: _There, item: str, to_sessions: str) -> Elsewhere:
    anchor = Anchors(PARTS.reserved()).of("item", item)
    text = f"{there.title} ({there.date})" if there.date else there.title
    href = f"{to_sessions}{address(there.session)}/index.html#{anchor}"
    return Elsewhere(href, text, clock(there.start), there.proposed)
