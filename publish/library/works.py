"""The works that come back to the bench: sessions that name the same subject are of one work.

Takes "Parlour guitar" and "parlour  guitar" as one work; a session that names no subject is of none.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from slugify import slugify

from publish.addresses import address
from publish.source import SessionSource

FOLDER = "work"
_LONGEST = 60


@dataclass(frozen=True, slots=True)
class _Named:
    slug: str
    """Name of the work's folder under work/."""
    subject: str
    """As its newest session names it."""

    @property
    def href(self) -> str:
        """The work's page, from the front page's folder."""
        return f"{address(FOLDER, self.slug)}/index.html"

    @property
    def name(self) -> str:
        """The subject as a heading."""
        return self.subject[:1].upper() + self.subject[1:]


@dataclass(frozen=True, slots=True)
class Work(_Named):
    """One work and its sessions."""

    sources: tuple[SessionSource, ...]
    """Oldest first."""


@dataclass(frozen=True, slots=True)
class Kin(_Named):
    """The sessions of one work, by their places among all."""

    places: tuple[int, ...]
    """Oldest first."""


def kin_among(subjects: Sequence[str | None]) -> tuple[Kin, ...]:
    """The works that sessions on these subjects, oldest first, belong to, in the order in which they first came.

    A later session never changes the address of an earlier work.
    """
    places: dict[str, list[int]] = {}
    for at, subject in enumerate(subjects):
        if folded(subject):
            places.setdefault(folded(subject), []).append(at)
    slugs = slugs_of(places, "work")
    return tuple(
        Kin(slug, " ".join((subjects[of[-1]] or "").split()), tuple(of))
        for slug, of in zip(slugs, places.values(), strict=True)
    )


def folded(name: str | None) -> str:
    """A name as it is compared: without case and with single spaces."""
    return " ".join((name or "").casefold().split())


def stem_of(name: str, bare: str) -> str:
    """A file name for a name; `bare` where nothing of it can be written so."""
    return slugify(name, max_length=_LONGEST, word_boundary=True) or bare


def slugs_of(names: Iterable[str], bare: str) -> tuple[str, ...]:
    """A different file name for each name; `bare` where nothing of it can be written so."""
    taken: set[str] = set()
    slugs = []
    for name in names:
        stem = stem_of(name, bare)
        slug, number = stem, 1
        while slug in taken or slug == "index":
            number += 1
            slug = f"{stem}-{number}"
        taken.add(slug)
        slugs.append(slug)
    return tuple(slugs)
