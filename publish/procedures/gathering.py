"""Makes the procedures of a shop: one pure function from sessions and a person's rulings."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from extract.rulings.shown import shows_measure
from publish.procedures.address_book import Book
from publish.procedures.deeds import Deed
from publish.procedures.library import Library, Met, Shelved, library_of
from publish.procedures.procedure import Doing, Procedure, Procedures, Stage, VersionDone
from publish.procedures.rulings.model import Ruling
from publish.procedures.sharing import cautions_of, loose_of
from publish.procedures.work import SessionWork, Told, WorkStep

Stretches = Mapping[str, tuple[tuple[int, ...], ...]]
"""By session, the places of the steps of each procedure that it did, in the order of the library."""


def procedures_of(works: Sequence[SessionWork], rulings: Iterable[Ruling] = (), book: Book | None = None) -> Procedures:
    """Every procedure, in the order in which it was first done; `works` come oldest first.

    The same sessions, rulings and book of addresses always give the same procedures; the machine fits in what a person
    ruled, and never changes it.
    """
    library = library_of(works, rulings, book=book)
    of, stretches = {work.slug: work for work in works}, stretches_of(library)
    return Procedures(tuple(procedure_of(one, of, stretches) for one in library.shelved), library.lost, library.moved)


def stretches_of(library: Library) -> Stretches:
    """What each session did, by procedure: a figure that is in no step is shared out among these."""
    found: dict[str, list[tuple[int, ...]]] = {}
    for one in library.shelved:
        for ran in one.ran:
            found.setdefault(ran.session, []).append(ran.steps)
    return {slug: tuple(of) for slug, of in found.items()}


def procedure_of(one: Shelved, works: Mapping[str, SessionWork], stretches: Stretches) -> Procedure:
    """A procedure with all that its sessions say of it; `works` has these by slug."""
    versions = tuple(_version(works[ran.session], ran.steps, stretches[ran.session]) for ran in one.ran)
    done = [[(step, deed, told) for step in of.steps for deed, told in _with_figures(step)] for of in versions]
    return Procedure(
        slug=one.slug,
        name=one.name,
        by_hand=one.by_hand,
        versions=versions,
        stages=tuple(_stage(row, done, one.pinned) for row in one.rows),
        pinned=one.pinned,
    )


def _version(work: SessionWork, own: tuple[int, ...], all_of: Sequence[tuple[int, ...]]) -> VersionDone:
    steps = [tuple(work.steps[at] for at in of) for of in all_of]
    at = all_of.index(own)
    return VersionDone(work, steps[at], loose_of(work, steps)[at], cautions_of(work, steps)[at])


def _stage(
    row: Sequence[Met], done: Sequence[Sequence[tuple[WorkStep, Deed, tuple[Told, ...]]]], pinned: int | None
) -> Stage:
    doings = [Doing(version, *done[version][deed], moved) for version, deed, moved in row]
    # Rows are filled from the version most like all others on; where one is preferred its words go first, and words
    # that say "it" go last.
    typical = min(doings, key=lambda one: (one.deed.borrows, one.version != pinned))
    return Stage(tuple(sorted(doings, key=lambda one: one.version)), typical)


def _with_figures(step: WorkStep) -> list[tuple[Deed, tuple[Told, ...]]]:
    """Each deed of a step with the figures that it shows; the last one has those that none shows."""
    shown = [[one for one in step.told if shows_measure(deed.text, one.measure)] for deed in step.deeds]
    taken: set[str] = set()
    own: list[list[Told]] = []
    for told in shown:
        own.append([one for one in told if one.measure.id not in taken])
        taken.update(one.measure.id for one in told)
    own[-1].extend(one for one in step.told if one.measure.id not in taken)
    return [(deed, tuple(told)) for deed, told in zip(step.deeds, own, strict=True)]
