"""What the pages of a procedure tell of its versions: when and how long, step by step, cautions, tools, materials."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from statistics import median

from publish.addresses import address
from publish.context import Hazard, Link
from publish.context.procedures import CautionOver, FilmTime, FullStep, InFull, NamedOver, Place, VersionTold
from publish.kit.same import thing_key
from publish.moments import clock
from publish.procedures.places import FOLDERS
from publish.procedures.procedure import Procedure, VersionDone
from publish.procedures.work import SessionWork, WorkStep
from publish.wording import count, sentence

_NEWEST = 2
"""Sessions that a caution names where many gave it."""


def titled(work: SessionWork) -> str:
    """A session's title with its day."""
    return f"{work.title} ({work.date})" if work.date else work.title


def version_told(version: VersionDone, *, preferred: bool) -> VersionTold:
    """A version in a line."""
    work, first = version.work, version.steps[0]
    return VersionTold(
        session=Link(f"{work.href}#{first.anchor}", work.title),
        date=work.date,
        date_text=work.date_text,
        subject=work.subject,
        proof=work.proof,
        moment=first.moment,
        length=clock(version.seconds),
        steps=count(len(version.steps), "step"),
        preferred=preferred,
    )


def steps_in_full(version: VersionDone) -> tuple[FullStep, ...]:
    """A version step by step."""
    return tuple(
        FullStep(
            number=number,
            text=sentence(step.text),
            mode=step.mode,
            href=version.work.href,
            moment=step.moment,
            rows=tuple(told.row for told in step.told),
        )
        for number, step in enumerate(version.steps, 1)
    )


def in_full(one: Procedure) -> tuple[InFull, ...]:
    """The version that a person prefers, and the newest where the page tells the others briefly."""
    shown = []
    if one.pinned is not None:
        card = Link(f"{FOLDERS['card']}{address(one.slug)}.html", "Bench card: this version on one sheet, to print")
        shown.append(_in_full("preferred", "The preferred version", one.versions[one.pinned], card))
    last = len(one.versions) - 1
    if one.many and one.pinned != last:
        shown.append(_in_full("newest", "The newest version", one.versions[last], None))
    return tuple(shown)


def _in_full(name: str, heading: str, version: VersionDone, card: Link | None) -> InFull:
    session = Link(f"{version.work.href}#{version.steps[0].anchor}", titled(version.work))
    return InFull(name, heading, session, steps_in_full(version), card)


def film_time(one: Procedure) -> FilmTime:
    """How long the films take over it."""
    lengths = [version.seconds for version in one.versions]
    least, most = clock(min(lengths)), clock(max(lengths))
    span = least if least == most else f"{least} to {most}"
    return FilmTime(len(lengths), clock(median(lengths)), span)


def cautions_within(one: Procedure, *, most: bool) -> tuple[CautionOver, ...]:
    """The cautions of its course; with `most` the newest sessions of each are named alone."""
    return _cautions(_own(one), most=most)


def cautions_elsewhere(one: Procedure, *, most: bool) -> tuple[CautionOver, ...]:
    """Those of the rest of the same sessions."""
    own = {(hazard.text, hazard.source) for _, hazard in _own(one)}
    works = {version.work.slug: version.work for version in one.versions}
    others = (
        (work, hazard) for work in works.values() for hazard in work.cautions if (hazard.text, hazard.source) not in own
    )
    return _cautions(others, most=most)


def _own(one: Procedure) -> list[tuple[SessionWork, Hazard]]:
    return [(version.work, hazard) for version in one.versions for hazard in version.cautions]


def _cautions(given: Iterable[tuple[SessionWork, Hazard]], *, most: bool) -> tuple[CautionOver, ...]:
    """Each caution once, with its seconds."""
    found: dict[tuple[str, str], list[tuple[SessionWork, Hazard]]] = {}
    for work, hazard in given:
        found.setdefault((hazard.text, hazard.source), []).append((work, hazard))
    return tuple(
        CautionOver(
            text=text,
            source=source,
            said=any(hazard.said for _, hazard in of),
            at=tuple(
                Place(Link(f"{work.href}#cautions", titled(work)), hazard.moment)
                for work, hazard in (of[-_NEWEST:] if most else of)
            ),
            more=f"{len(of) - _NEWEST} more" if most and len(of) > _NEWEST else "",
        )
        for (text, source), of in found.items()
    )


def tools_and_materials(versions: Sequence[VersionDone]) -> tuple[tuple[NamedOver, ...], tuple[NamedOver, ...]]:
    """Both, most often named first."""
    return _named(versions, lambda step: step.tools), _named(versions, lambda step: step.materials)


def _named(versions: Sequence[VersionDone], names: Callable[[WorkStep], tuple[str, ...]]) -> tuple[NamedOver, ...]:
    found: dict[str, tuple[str, set[int]]] = {}
    for at, version in enumerate(versions):
        for step in version.steps:
            for name in names(step):
                key = thing_key(name, by_hand=name in version.work.by_hand)
                found.setdefault(key, (name, set()))[1].add(at)
    listed = [NamedOver(name, len(of)) for name, of in found.values()]
    return tuple(sorted(listed, key=lambda one: -one.versions))
