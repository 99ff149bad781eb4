"""Makes the procedures of a shop: one pure function from sessions and a person's rulings."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from extract.rulings.shown import shows_measure
from publish.library.works import slugs_of
from publish.procedures.aligning import AlignedRow, align
from publish.procedures.deeds import Deed
from publish.procedures.knowing import Known, know
from publish.procedures.likeness import signature
from publish.procedures.naming import name_of
from publish.procedures.procedure import Doing, Procedure, Procedures, Stage, VersionDone
from publish.procedures.rulings.log import in_force
from publish.procedures.rulings.model import Ruling, Version
from publish.procedures.rulings.placing import Lost, Placed, place
from publish.procedures.rulings.replay import Group, replay, steps_in
from publish.procedures.sharing import cautions_of, loose_of
from publish.procedures.work import SessionWork, Told, WorkStep


def procedures_of(works: Sequence[SessionWork], rulings: Iterable[Ruling] = ()) -> Procedures:
    """Every procedure, in the order in which it was first done; `works` come oldest first.

    The same sessions and rulings always give the same procedures; the machine fits in what a person ruled, and never
    changes it.
    """
    groups = replay(in_force(rulings))
    placed = place(groups, works)
    known = know(works, placed.held, len(groups))
    done = _versions(works, known)
    numbers = list(done)
    names = [_name(number, done[number], groups) for number in numbers]
    founders = [
        groups[number].name if number < len(groups) and groups[number].name else name_of([_deeds(done[number][0])])
        for number in numbers
    ]
    slugs = slugs_of(founders, "procedure")
    made = (
        _procedure(slug, name, done[number], groups[number] if number < len(groups) else None, placed)
        for slug, name, number in zip(slugs, names, numbers, strict=True)
    )
    return Procedures(tuple(made), tuple(_lines(groups, placed.lost)))


def _versions(works: Sequence[SessionWork], known: Known) -> dict[int, tuple[VersionDone, ...]]:
    """By number of the procedure, in the order in which each was first done."""
    places: dict[tuple[int, int], list[WorkStep]] = {}
    for run, number in known:
        places.setdefault((run.work, number), []).extend(works[run.work].steps[run.begin : run.end])
    parts: dict[int, list[tuple[int, tuple[WorkStep, ...]]]] = {}
    for (work, number), steps in places.items():
        parts.setdefault(work, []).append((number, tuple(steps)))
    done: dict[int, list[VersionDone]] = {}
    for at, of in parts.items():
        stretches = [stretch for _, stretch in of]
        loose, cautions = loose_of(works[at], stretches), cautions_of(works[at], stretches)
        for (number, stretch), own, care in zip(of, loose, cautions, strict=True):
            done.setdefault(number, []).append(VersionDone(works[at], stretch, own, care))
    return {number: tuple(versions) for number, versions in done.items()}


def _name(number: int, versions: Sequence[VersionDone], groups: Sequence[Group]) -> str:
    given = groups[number].name if number < len(groups) else ""
    return given or name_of([_deeds(one) for one in versions])


def _deeds(version: VersionDone) -> tuple[Deed, ...]:
    return tuple(deed for step in version.steps for deed in step.deeds)


def _procedure(
    slug: str, name: str, versions: tuple[VersionDone, ...], group: Group | None, placed: Placed
) -> Procedure:
    pinned = None if group is None or group.pinned is None else _pinned(group.pinned, versions, placed)
    return Procedure(
        slug=slug,
        name=name,
        by_hand=group is not None and bool(group.name),
        versions=versions,
        stages=_stages(versions, pinned),
        pinned=pinned,
    )


def _pinned(wanted: Version, versions: Sequence[VersionDone], placed: Placed) -> int | None:
    now = {placed.now[key] for key in steps_in((wanted,)) if key in placed.now}
    return next(
        (at for at, one in enumerate(versions) if any((one.work.slug, step.id) in now for step in one.steps)), None
    )


def _stages(versions: Sequence[VersionDone], pinned: int | None) -> tuple[Stage, ...]:
    done = [[(step, deed, told) for step in one.steps for deed, told in _with_figures(step)] for one in versions]
    rows = align([[signature(deed) for _, deed, _ in one] for one in done], pinned)
    return tuple(_stage(row, done, pinned) for row in rows)


def _stage(
    row: AlignedRow, done: Sequence[Sequence[tuple[WorkStep, Deed, tuple[Told, ...]]]], pinned: int | None
) -> Stage:
    doings = [Doing(place.version, *done[place.version][place.deed], moved) for place, moved in row.places]
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


def _lines(groups: Sequence[Group], lost: Sequence[Lost]) -> list[str]:
    lines = []
    for one in lost:
        group = groups[one.group]
        of = f"“{group.name}”" if group.name else f"a procedure of {len(group.steps)} steps"
        lines.append(
            f"a ruling on {of} has no place any more for “{one.step.words}” in {one.session} ({one.why}); it stays in "
            "procedures.json"
        )
    return lines
