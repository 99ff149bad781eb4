"""The parts of a session page, in their order: one row here and one template a part.

To add a part, write templates/parts/<name>.html and give it a row. A shop's own tool may also change its own table:

    parts = PageParts(PARTS.all).after("procedure", Part("jigs", "Jigs", lambda page: True))
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from publish.context import SessionPage


@dataclass(frozen=True, slots=True)
class Part:
    """One part of the page."""

    name: str
    """Its id on the page and the name of its template."""
    title: str
    """Its heading."""
    shown: Callable[[SessionPage], bool]
    """Whether a page has anything to show in it."""
    required: bool = False
    """A part that no table may leave out."""


class PageParts:
    """An ordered table of parts, changed by name; an unknown name raises `KeyError`."""

    def __init__(self, parts: tuple[Part, ...]) -> None:
        self.all = parts

    def on(self, page: SessionPage) -> tuple[Part, ...]:
        """The parts that a page shows."""
        return tuple(part for part in self.all if part.required or part.shown(page))

    def before(self, name: str, part: Part) -> PageParts:
        """A table with one more part, before the named one."""
        at = self._place(name)
        return PageParts((*self.all[:at], part, *self.all[at:]))

    def after(self, name: str, part: Part) -> PageParts:
        """A table with one more part, behind the named one."""
        at = self._place(name) + 1
        return PageParts((*self.all[:at], part, *self.all[at:]))

    def without(self, name: str) -> PageParts:
        """A table without the named part. A required part stays: `ValueError`."""
        at = self._place(name)
        if self.all[at].required:
            raise ValueError(f"the part {name!r} belongs on every page")
        return PageParts((*self.all[:at], *self.all[at + 1 :]))

    def reserved(self) -> tuple[str, ...]:
        """Ids that items of the record may not take."""
        return (*(part.name for part in self.all), "top", "main", "player", "playing", "playhead", "seek")

    def _place(self, name: str) -> int:
        for at, part in enumerate(self.all):
            if part.name == name:
                return at
        raise KeyError(f"no part of the page is called {name!r}; there are {', '.join(p.name for p in self.all)}")


def _always(page: SessionPage) -> bool:  # noqa: ARG001 (every part is asked in one way)
    return True


PARTS = PageParts(
    (
        Part("summary", "In short", _always),
        Part("note", "Author’s note", lambda page: bool(page.note)),
        Part("queries", "To settle, to check", lambda page: bool(page.queries)),
        Part("found-left", "As found, as left", lambda page: bool(page.pairs)),
        Part("cautions", "Cautions", _always, required=True),
        Part("job", "The job to scale", lambda page: page.job is not None),
        Part("procedure", "Procedure", lambda page: bool(page.stages)),
        Part("compared", "Among the shop’s figures", lambda page: bool(page.comparisons)),
        Part("figures", "Figures", lambda page: bool(page.groups)),
        Part("kit", "Tools and materials", lambda page: bool(page.tools or page.materials)),
        Part("errata", "Errata", lambda page: bool(page.errata or page.later_errata)),
        Part("follow-ups", "Left for later", lambda page: bool(page.follow_ups)),
        Part("doubts", "To look up", lambda page: bool(page.doubts)),
        Part("history", "Other sessions on this work", lambda page: bool(page.history or page.work)),
        Part("transcript", "What was said", lambda page: bool(page.spoken)),
        Part("making", "How this page was made", _always),
    )
)
"""What a session page is made of."""
