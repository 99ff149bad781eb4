"""Which address each procedure has: it follows the name that is shown, and an address that was once published leads on.

Takes "procedures/replace-the-saddle.html" for "Replace the saddle". Where a person calls that one "Make a saddle", or
makes one procedure of two, the former address leads to the procedure that has most of the steps that it had, and no
other procedure gets it meanwhile; called by its former name again, a procedure has its former address again.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from publish.library.works import stem_of
from publish.procedures.address_book import Book, Kind, Lodged, Steps

_RESERVED = "index"
_BARE = "procedure"
"""Of a name of which nothing can be written so."""


@dataclass(frozen=True, slots=True)
class Named:
    """A procedure, as far as its address depends on it."""

    name: str
    steps: Steps
    has: tuple[Kind, ...]
    """What is published of it; empty where it has no page."""


@dataclass(frozen=True, slots=True)
class Moved:
    """An address from which something moved away."""

    slug: str
    to: int | None
    """Place of the procedure to which it leads; null where nothing of what it had is left."""
    had: tuple[Kind, ...]
    """What stood there and does no more; its page, unless it is still a procedure's own."""


@dataclass(frozen=True, slots=True)
class Addressed:
    """The addresses of all procedures."""

    slugs: tuple[str, ...]
    """In the order of the procedures, no two the same."""
    moved: tuple[Moved, ...]
    """In the order in which they were first published."""


def addressed(book: Book, named: Sequence[Named]) -> Addressed:
    """The address of each procedure, and where those of the book lead that none has; the same always gives the same."""
    stems = [stem_of(one.name, _BARE) for one in named]
    shared = _shared(book, named)
    leads = {slug: max(of, key=lambda at: (of[at], -at)) for slug, of in shared.items() if of}
    leads = {one.slug: at for one in book.addresses if (at := _leads(one, book, leads)) is not None}
    held = _held(book, named, stems, shared, leads)
    taken = set(held.values())
    # Those with a page choose first: the others have an address only to be named by.
    for at in sorted(range(len(named)), key=lambda at: (not named[at].has, at)):
        if at not in held:
            held[at] = next(
                slug for slug in _numbered(stems[at]) if slug not in taken and leads.get(slug, at) == at
            )  # fmt: skip
            taken.add(held[at])
    own = {held[at]: at for at, one in enumerate(named) if one.has}
    return Addressed(tuple(held[at] for at in range(len(named))), tuple(_moved(book, named, own, leads)))


def _moved(book: Book, named: Sequence[Named], own: Mapping[str, int], leads: Mapping[str, int]) -> Iterator[Moved]:
    for one in book.addresses:
        at = own.get(one.slug)
        had = one.has if at is None else tuple(kind for kind in one.has if kind not in named[at].has)
        if had:
            yield Moved(one.slug, leads.get(one.slug) if at is None else at, had)


def _shared(book: Book, named: Sequence[Named]) -> dict[str, Counter[int]]:
    """By address, how many of the steps that it had each procedure has now."""
    of = {(session, step): at for at, one in enumerate(named) for session, steps in one.steps.items() for step in steps}
    return {one.slug: Counter(of[key] for key in _keys(one.steps) if key in of) for one in book.addresses}


def _leads(one: Lodged, book: Book, leads: Mapping[str, int]) -> int | None:
    """The procedure that has most of its steps; where none has any, that of the address to which it led last."""
    after, seen = {other.slug: other.to for other in book.addresses}, set()
    slug = one.slug
    while slug and slug not in leads and slug not in seen:
        seen.add(slug)
        slug = after.get(slug, "")
    return leads.get(slug)


def _held(
    book: Book,
    named: Sequence[Named],
    stems: Sequence[str],
    shared: Mapping[str, Counter[int]],
    leads: Mapping[str, int],
) -> dict[int, str]:
    """The procedures that keep an address, or get a former one back: one made from their name, with steps of theirs.

    What has most in common goes first. An address that leads to another procedure is only free where that one has the
    same name and has its own already: so of two of one name each keeps its own, and gets it back when a person takes
    back that they are one.
    """
    numbers = [sum(map(len, one.steps.values())) for one in named]
    sizes = {one.slug: sum(map(len, one.steps.values())) for one in book.addresses}
    fitting = [
        # The share of all steps that both have (Jaccard).
        (-common / (sizes[slug] + numbers[at] - common), len(slug), slug, at)
        for slug, of in shared.items()
        for at, common in of.items()
        if _is_of(slug, stems[at])
    ]
    held: dict[int, str] = {}
    taken: set[str] = set()
    for _, _, slug, at in sorted(fitting):
        to = leads[slug]
        if at not in held and slug not in taken and (to == at or (to in held and stems[to] == stems[at])):
            held[at] = slug
            taken.add(slug)
    return held


def _numbered(stem: str) -> Iterator[str]:
    if stem != _RESERVED:
        yield stem
    number = 2
    while True:
        yield f"{stem}-{number}"
        number += 1


def _is_of(slug: str, stem: str) -> bool:
    """It is this stem, or it and a number."""
    return slug == stem or (slug.startswith(f"{stem}-") and slug[len(stem) + 1 :].isdecimal())


def _keys(steps: Steps) -> Iterator[tuple[str, str]]:
    return ((session, step) for session, of in steps.items() for step in of)
