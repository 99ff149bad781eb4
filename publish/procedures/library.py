"""The procedures of a shop by the places of their steps alone: which there are, what they are called, how versions lie
beside one another.

It rests on outlines and a person's rulings, so that a new title or figure leaves it as it is; `procedure.py` has what
pages are made from.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from publish.procedures.address_book import Book, Kind, Lodged, Steps
from publish.procedures.addressing import Moved, Named, addressed
from publish.procedures.aligning import align
from publish.procedures.knowing import Known, know
from publish.procedures.likeness import signature
from publish.procedures.naming import name_of
from publish.procedures.outline import Course
from publish.procedures.rulings.log import in_force
from publish.procedures.rulings.model import Ruling, Version
from publish.procedures.rulings.placing import Lost, Placed, place
from publish.procedures.rulings.replay import Group, replay, steps_in

MANY = 6
"""From so many versions on, a procedure's page tells them briefly, and another one has every version."""


@dataclass(frozen=True, slots=True)
class Ran:
    """A procedure as one session did it."""

    session: str
    """Folder of the session."""
    steps: tuple[int, ...]
    """Places among its steps."""


Met = tuple[int, int, bool]
"""A deed of a row: place of its version, place among that one's deeds, and whether it was done in another order."""


@dataclass(frozen=True, slots=True)
class Study:
    """What the versions of a procedure come to, beside one another."""

    name: str
    """By the words of all versions."""
    rows: tuple[tuple[Met, ...], ...]
    """The deeds that answer to one another, in order of work."""


@dataclass(frozen=True, slots=True)
class Shelved:
    """A procedure."""

    slug: str
    name: str
    by_hand: bool
    """A person named it."""
    pinned: int | None
    """Place of the version that a person prefers."""
    ran: tuple[Ran, ...]
    """Its versions, oldest first."""
    rows: tuple[tuple[Met, ...], ...]

    @property
    def has_page(self) -> bool:
        """It was done more than once, or a person named or pinned it."""
        return len(self.ran) > 1 or self.by_hand or self.pinned is not None

    @property
    def has(self) -> tuple[Kind, ...]:
        """What is published of it."""
        kinds: dict[Kind, bool] = {"page": True, "card": self.pinned is not None, "every": len(self.ran) >= MANY}
        return tuple(kind for kind, holds in kinds.items() if holds) if self.has_page else ()


@dataclass(frozen=True, slots=True)
class Library:
    """All procedures of a shop."""

    shelved: tuple[Shelved, ...]
    """In the order in which they were first done."""
    lost: tuple[str, ...]
    """A line for each ruling of a person of which a step has no place any more."""
    moved: tuple[Moved, ...] = ()
    """Addresses that were published and from which something moved away."""


Ways = Sequence[tuple[Course, Sequence[int]]]
"""The versions of a procedure: each session with the places of its steps."""
Studying = Callable[[Ways, int | None], Study]


def library_of(
    courses: Sequence[Course],
    rulings: Iterable[Ruling] = (),
    studying: Studying | None = None,
    book: Book | None = None,
) -> Library:
    """Every procedure; `courses` come oldest first.

    The same sessions, rulings and book of addresses always give the same procedures; the machine fits in what a person
    ruled, and never changes it. `studying` may know what `study` gives already.
    """
    groups = replay(in_force(rulings))
    placed = place(groups, courses)
    done = _ways(courses, know(courses, placed.held, len(groups)))
    pinned = {number: _pinned(number, ways, groups, placed) for number, ways in done.items()}
    studied = {number: (studying or study)(ways, pinned[number]) for number, ways in done.items()}
    given = {number: groups[number].name if number < len(groups) else "" for number in done}
    shelved = [
        Shelved(
            slug="",
            name=given[number] or one.name,
            by_hand=bool(given[number]),
            pinned=pinned[number],
            ran=tuple(Ran(course.slug, tuple(steps)) for course, steps in done[number]),
            rows=one.rows,
        )
        for number, one in studied.items()
    ]
    steps = _ids(shelved, courses)
    named = (Named(one.name, of, one.has) for one, of in zip(shelved, steps, strict=True))
    found = addressed(book or Book(), tuple(named))
    placed_at = (replace(one, slug=slug) for one, slug in zip(shelved, found.slugs, strict=True))
    return Library(tuple(placed_at), tuple(_lines(groups, placed.lost)), found.moved)


def brought_up(book: Book, library: Library, courses: Sequence[Course]) -> Book:
    """The book of addresses after a publish of this library: every address stays, new ones stand behind."""
    steps = _ids(library.shelved, courses)
    now = {
        one.slug: Lodged(slug=one.slug, steps=of, has=one.has)
        for one, of in zip(library.shelved, steps, strict=True)
        if one.has_page
    }
    moved = {one.slug: one.to for one in library.moved}
    kept = []
    for one in book.addresses:
        own, to = now.pop(one.slug, None), moved.get(one.slug)
        if own is not None:
            kept.append(own.model_copy(update={"has": tuple(dict.fromkeys((*one.has, *own.has)))}))
        else:
            kept.append(one if to is None else one.model_copy(update={"to": library.shelved[to].slug}))
    return Book(addresses=(*kept, *now.values()))


def _ids(shelved: Sequence[Shelved], courses: Sequence[Course]) -> list[Steps]:
    of = {course.slug: course.steps for course in courses}
    return [{ran.session: tuple(of[ran.session][at].id for at in ran.steps) for ran in one.ran} for one in shelved]


def study(ways: Ways, pinned: int | None) -> Study:
    """The versions beside one another; `pinned` is the one that is set before all others."""
    versions = [[deed for at in steps for deed in course.steps[at].deeds] for course, steps in ways]
    rows = align([[signature(deed) for deed in deeds] for deeds in versions], pinned)
    met = tuple(tuple((at.version, at.deed, moved) for at, moved in row.places) for row in rows)
    return Study(name_of(versions), met)


def library_in(kept: dict[str, Any]) -> Library:
    """A library that was kept as plain values."""
    moved = (Moved(one["slug"], one["to"], tuple(one["had"])) for one in kept["moved"])
    return Library(tuple(_shelved(one) for one in kept["shelved"]), tuple(kept["lost"]), tuple(moved))


def study_in(kept: dict[str, Any]) -> Study:
    """The same of a study."""
    return Study(kept["name"], _rows(kept["rows"]))


def _shelved(one: dict[str, Any]) -> Shelved:
    ran = tuple(Ran(of["session"], tuple(of["steps"])) for of in one["ran"])
    return Shelved(one["slug"], one["name"], one["by_hand"], one["pinned"], ran, _rows(one["rows"]))


def _rows(kept: list[Any]) -> tuple[tuple[Met, ...], ...]:
    return tuple(tuple((version, deed, moved) for version, deed, moved in row) for row in kept)


def _ways(courses: Sequence[Course], known: Known) -> dict[int, list[tuple[Course, list[int]]]]:
    """The versions by number of the procedure, in the order in which each was first done."""
    places: dict[tuple[int, int], list[int]] = {}
    for run, number in known:
        places.setdefault((run.work, number), []).extend(range(run.begin, run.end))
    done: dict[int, list[tuple[Course, list[int]]]] = {}
    for (work, number), steps in places.items():
        done.setdefault(number, []).append((courses[work], steps))
    return done


def _pinned(number: int, ways: Ways, groups: Sequence[Group], placed: Placed) -> int | None:
    wanted: Version | None = groups[number].pinned if number < len(groups) else None
    if wanted is None:
        return None
    now = {placed.now[key] for key in steps_in((wanted,)) if key in placed.now}
    return next(
        (at for at, (of, steps) in enumerate(ways) if any((of.slug, of.steps[one].id) in now for one in steps)), None
    )


def _lines(groups: Sequence[Group], lost: Sequence[Lost]) -> list[str]:
    lines = []
    for one in lost:
        group = groups[one.group]
        of = f"“{group.name}”" if group.name else f"a procedure of {len(group.members)} steps"
        lines.append(
            f"a ruling on {of} has no place any more for “{one.step.words}” in {one.session} ({one.why}); it stays in "
            "procedures.json"
        )
    return lines
