"""Makes up the pages of the procedure library."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from statistics import median
from typing import Protocol

from capture.shop import ShopSettings
from publish.addresses import absolute, address
from publish.context import Hazard, Link
from publish.context.procedures import (
    CautionOver,
    FilmTime,
    Measured,
    NamedOver,
    Preferred,
    PreferredStep,
    ProcedureEntry,
    ProcedureIndex,
    ProcedurePage,
    Said,
    StageOver,
    VersionTold,
)
from publish.kit.same import thing_key
from publish.library.works import folded
from publish.moments import clock
from publish.procedures.measured import of_procedure, of_step
from publish.procedures.procedure import Doing, Procedure, Procedures, Stage, VersionDone
from publish.procedures.work import SessionWork, WorkStep
from publish.wording import STANDING_CAUTION, count, sentence

FOLDER = "procedures"
INDEX = f"{FOLDER}/index.html"
"""The list, from the front page's folder."""
CARDS = "cards"
"""Folder of the bench cards, in that."""
ROOT = "../"
"""From these pages to the front page's folder."""
_OFTEN = 4
"""From so many versions on, what one alone has stands apart."""


def make_procedures(procedures: Procedures, shop: ShopSettings) -> dict[str, ProcedurePage | ProcedureIndex]:
    """Each page by its name on the site, the list last; nothing where no session has a step."""
    pages: dict[str, ProcedurePage | ProcedureIndex] = {
        page_name(one.slug): procedure_page(one, shop, figures_of(one)) for one in procedures.all if one.has_page
    }
    if procedures.all:
        pages[INDEX] = index_page([(one, entry_of(one)) for one in procedures.all], shop)
    return pages


def page_name(slug: str) -> str:
    """A procedure's page, from the front page's folder."""
    return f"{FOLDER}/{address(slug)}.html"


def card_name(slug: str) -> str:
    """Its bench card, from the front page's folder."""
    return f"{FOLDER}/{CARDS}/{address(slug)}.html"


def figures_of(one: Procedure) -> tuple[Measured, ...]:
    """What was measured in all versions: for the page and for the search."""
    return of_procedure([(version.work, told) for version in one.versions for told in version.told], "figure")


def procedure_page(one: Procedure, shop: ShopSettings, figures: tuple[Measured, ...]) -> ProcedurePage:
    """The page of a procedure; `figures` are what was measured in it, by `figures_of`."""
    often = len(one.versions) >= _OFTEN
    stages = [_stage(one, stage, number) for number, stage in enumerate(one.stages, 1)]
    apart = [stage.versions == 1 and often for stage in one.stages]
    own = [care for version in one.versions for care in ((version.work, hazard) for hazard in version.cautions)]
    return ProcedurePage(
        title=shop.title,
        name=one.name,
        by_hand=one.by_hand,
        author=shop.author,
        licence=shop.licence,
        assets=f"{ROOT}assets/",
        address=_web(shop, f"{address(one.slug)}.html"),
        front=Link(f"{ROOT}index.html", shop.title),
        index=Link("index.html", "All procedures"),
        done=f"Done in {count(one.sessions, 'session')}",
        time=_time(one),
        preferred=None if one.pinned is None else _preferred(one, one.versions[one.pinned]),
        versions=tuple(_version(version, at == one.pinned) for at, version in enumerate(one.versions)),
        stages=tuple(stage for stage, alone in zip(stages, apart, strict=True) if not alone),
        once=tuple(stage for stage, alone in zip(stages, apart, strict=True) if alone),
        figures=figures,
        standing_caution=STANDING_CAUTION,
        cautions=_cautions(own),
        elsewhere=_cautions(_elsewhere(one, {(hazard.text, hazard.source) for _, hazard in own})),
        tools=_named(one.versions, lambda step: step.tools),
        materials=_named(one.versions, lambda step: step.materials),
    )


def _stage(one: Procedure, stage: Stage, number: int) -> StageOver:
    versions = len(one.versions)
    every = stage.versions == versions
    share = ("" if versions == 1 else f"in all {versions}") if every else f"in {stage.versions} of {versions}"
    owned = [(one.versions[doing.version].work, told) for doing in stage.doings for told in doing.told]
    anchor = f"step-{number}"
    return StageOver(
        anchor=anchor,
        number=number,
        text=sentence(stage.typical.deed.text),
        share=share,
        every=every,
        said=tuple(_said(one.versions[doing.version].work, doing) for doing in stage.doings),
        figures=of_step(owned, anchor),
    )


def _said(work: SessionWork, doing: Doing) -> Said:
    notes = ("in another order" if doing.moved else "", doing.step.mode)
    return Said(
        text=sentence(doing.deed.text),
        session=Link(f"{work.href}#{doing.step.anchor}", _titled(work)),
        moment=doing.step.moment,
        note=", ".join(note for note in notes if note),
    )


def _version(version: VersionDone, preferred: bool) -> VersionTold:
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


def _preferred(one: Procedure, version: VersionDone) -> Preferred:
    work = version.work
    return Preferred(
        session=Link(f"{work.href}#{version.steps[0].anchor}", _titled(work)),
        steps=tuple(
            PreferredStep(
                number=number,
                text=sentence(step.text),
                mode=step.mode,
                href=work.href,
                moment=step.moment,
                rows=tuple(told.row for told in step.told),
            )
            for number, step in enumerate(version.steps, 1)
        ),
        card=Link(f"{CARDS}/{address(one.slug)}.html", "Bench card: this version on one sheet, to print"),
    )


def _titled(work: SessionWork) -> str:
    return f"{work.title} ({work.date})" if work.date else work.title


def _time(one: Procedure) -> FilmTime:
    lengths = [version.seconds for version in one.versions]
    least, most = clock(min(lengths)), clock(max(lengths))
    span = least if least == most else f"{least} to {most}"
    return FilmTime(len(lengths), clock(median(lengths)), span)


def _elsewhere(one: Procedure, own: set[tuple[str, str]]) -> Iterable[tuple[SessionWork, Hazard]]:
    works = {version.work.slug: version.work for version in one.versions}
    for work in works.values():
        yield from ((work, hazard) for hazard in work.cautions if (hazard.text, hazard.source) not in own)


def _cautions(given: Iterable[tuple[SessionWork, Hazard]]) -> tuple[CautionOver, ...]:
    """Each caution once, with all its seconds."""
    found: dict[tuple[str, str], list[tuple[SessionWork, Hazard]]] = {}
    for work, hazard in given:
        found.setdefault((hazard.text, hazard.source), []).append((work, hazard))
    return tuple(
        CautionOver(
            text=text,
            source=source,
            said=any(hazard.said for _, hazard in of),
            at=tuple((Link(f"{work.href}#cautions", _titled(work)), hazard.moment) for work, hazard in of),
        )
        for (text, source), of in found.items()
    )


def _named(versions: Sequence[VersionDone], names: Callable[[WorkStep], tuple[str, ...]]) -> tuple[NamedOver, ...]:
    found: dict[str, tuple[str, set[int]]] = {}
    for at, version in enumerate(versions):
        for step in version.steps:
            for name in names(step):
                key = thing_key(name, by_hand=name in version.work.by_hand)
                found.setdefault(key, (name, set()))[1].add(at)
    listed = [NamedOver(name, len(of)) for name, of in found.values()]
    return tuple(sorted(listed, key=lambda one: -one.versions))


class Listed(Protocol):
    """A procedure, as far as its place in the list depends on it."""

    @property
    def slug(self) -> str:
        """Name of its page."""

    @property
    def name(self) -> str:
        """What it is called."""

    @property
    def pinned(self) -> int | None:
        """Place of the version that a person prefers."""

    @property
    def has_page(self) -> bool:
        """It has a page of its own."""


def index_page(listed: Sequence[tuple[Listed, ProcedureEntry]], shop: ShopSettings) -> ProcedureIndex:
    """The list of procedures."""
    having = sorted(
        (one for one in listed if one[0].has_page),
        key=lambda one: (one[0].pinned is None, -one[1].time.number, folded(one[0].name), one[0].slug),
    )
    once = sorted((one for one in listed if not one[0].has_page), key=lambda one: (folded(one[0].name), one[0].slug))
    return ProcedureIndex(
        title=shop.title,
        author=shop.author,
        licence=shop.licence,
        assets=f"{ROOT}assets/",
        address=_web(shop, "index.html"),
        front=Link(f"{ROOT}index.html", shop.title),
        entries=tuple(entry for _, entry in having),
        once=tuple(entry for _, entry in once),
    )


def entry_of(one: Procedure) -> ProcedureEntry:
    """A procedure's line in the list: it leads to its page, or to the step of the one session that did it."""
    trades = dict.fromkeys(version.work.trade for version in one.versions if version.work.trade)
    steps = count(len(one.stages), "step")
    where = f"{one.versions[0].work.title}, {steps}" if one.sessions == 1 else ""
    return ProcedureEntry(
        link=Link(f"{address(one.slug)}.html" if one.has_page else _first_step(one), one.name),
        contents=where or f"{count(one.sessions, 'session')}, {steps}",
        trades=", ".join(trades),
        time=_time(one),
        preferred=one.pinned is not None,
    )


def _first_step(one: Procedure) -> str:
    version = one.versions[0]
    return f"{version.work.href}#{version.steps[0].anchor}"


def _web(shop: ShopSettings, name: str) -> str | None:
    folder = absolute(shop.site_address, FOLDER)
    return f"{folder}{name}" if folder else None
