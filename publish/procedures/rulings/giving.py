"""Giving rulings on procedures: one function a ruling, each checked against the procedures that the person sees.

Each returns a line for `ProcedureLog.append`, and raises `RulingError` with one clear line where it can't be given.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from extract.rulings import Hand, RulingError
from publish.procedures.procedure import Procedure, Procedures, VersionDone
from publish.procedures.rulings.log import in_force
from publish.procedures.rulings.model import (
    Merge,
    OnProcedure,
    Pin,
    Rename,
    Ruling,
    Split,
    StepNamed,
    Undo,
    Unpin,
    Version,
    versions_of,
)
from publish.procedures.rulings.replay import steps_in
from publish.procedures.work import WorkStep
from publish.rulings.naming import name_given, only_one, same_letters
from publish.rulings.taking_back import to_take_back


def called(procedures: Procedures, wanted: str) -> Procedure:
    """The procedure with that page name or name, or the only one whose name holds it. Raises `RulingError`."""
    asked = same_letters(wanted)
    return only_one(
        wanted,
        (
            lambda one: one.slug == wanted,
            lambda one: same_letters(one.name) == asked,
            lambda one: bool(asked) and asked in same_letters(one.name),
        ),
        procedures.all,
        label=lambda one: one.slug,
        names=lambda one: (one.name,),
        what="procedure",
        where="`spokeshave procedure list`",
    )


def done_in(procedure: Procedure, session: str) -> VersionDone:
    """The version of a session, named by its folder or a part of that. Raises `RulingError`."""
    exact = [one for one in procedure.versions if one.work.slug == session]
    hits = exact or [one for one in procedure.versions if session in one.work.slug]
    if len(hits) != 1:
        known = ", ".join(one.work.slug for one in (hits or procedure.versions))
        problem = "several sessions match" if hits else "no session that did it matches"
        raise RulingError(f"{problem} {session!r}", f"name one of: {known}")
    return hits[0]


def rename(procedure: Procedure, name: str, hand: Hand) -> Rename:
    """Call it by a name."""
    told = name_given(name, "procedure")
    return Rename(id=hand.ruling_id, at=hand.at, by=hand.by, of=_all(procedure), name=told)


def merge(procedures: Sequence[Procedure], hand: Hand) -> Merge:
    """Make one of several; the first one's name holds."""
    if len({one.slug for one in procedures}) < len(procedures) or len(procedures) < 2:
        raise RulingError("merging takes two different procedures", "name another one")
    return Merge(id=hand.ruling_id, at=hand.at, by=hand.by, of=tuple(_all(one) for one in procedures))


def split_by_sessions(procedure: Procedure, sessions: Sequence[str], name: str, hand: Hand) -> Split:
    """Set what some sessions did apart."""
    apart = [done_in(procedure, session) for session in sessions]
    stay = [one for one in procedure.versions if one not in apart]
    return _split([_version(one, one.steps) for one in stay], [_version(one, one.steps) for one in apart], name, hand)


def split_by_step(procedure: Procedure, number: int, name: str, hand: Hand) -> Split:
    """Set the steps from one on apart, in every version; `number` counts from 1."""
    if not 1 < number <= len(procedure.stages):
        raise RulingError(f"it can't be split before step {number}", f"choose one from 2 to {len(procedure.stages)}")
    first: dict[tuple[int, str], int] = {}
    for at, stage in enumerate(procedure.stages, 1):
        for doing in stage.doings:
            first.setdefault((doing.version, doing.step.id), at)
    stay, apart = [], []
    for at, version in enumerate(procedure.versions):
        behind = [step for step in version.steps if first[at, step.id] >= number]
        before = [step for step in version.steps if first[at, step.id] < number]
        stay += [_version(version, before)] if before else []
        apart += [_version(version, behind)] if behind else []
    return _split(stay, apart, name, hand)


def pin(procedure: Procedure, session: str, hand: Hand) -> Pin:
    """Prefer the version of a session."""
    version = done_in(procedure, session)
    return Pin(id=hand.ruling_id, at=hand.at, by=hand.by, of=_all(procedure), version=_version(version, version.steps))


def unpin(procedure: Procedure, hand: Hand) -> Unpin:
    """Prefer none."""
    if procedure.pinned is None:
        raise RulingError(f"no version of “{procedure.name}” is pinned", "there is nothing to take off")
    return Unpin(id=hand.ruling_id, at=hand.at, by=hand.by, of=_all(procedure))


def undo(rulings: Iterable[Ruling], wanted: str | None, hand: Hand) -> Undo:
    """Take back a ruling, the last one where none is named."""
    holding = in_force(rulings)
    if not holding:
        raise RulingError("there is no ruling on procedures to take back", "see `spokeshave procedure list`")
    meant = to_take_back(holding, wanted, _steps)
    return Undo(id=hand.ruling_id, at=hand.at, by=hand.by, ruling=meant.id)


def _steps(ruling: OnProcedure) -> set[tuple[str, str]]:
    return set(steps_in(versions_of(ruling)))


def _split(stay: Sequence[Version], apart: Sequence[Version], name: str, hand: Hand) -> Split:
    if not stay or not apart:
        raise RulingError("that would leave one of the two empty", "name some of its sessions or steps, not all")
    told = name_given(name, "procedure") if name else ""
    return Split(id=hand.ruling_id, at=hand.at, by=hand.by, stay=tuple(stay), apart=tuple(apart), name=told)


def _all(procedure: Procedure) -> tuple[Version, ...]:
    return tuple(_version(one, one.steps) for one in procedure.versions)


def _version(version: VersionDone, steps: Sequence[WorkStep]) -> Version:
    named = tuple(StepNamed(id=step.id, words=step.text) for step in steps)
    return Version(session=version.work.slug, steps=named)
