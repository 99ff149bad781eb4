"""Makes up the pages of the procedure library."""

from __future__ import annotations

from capture.shop import ShopSettings
from publish.addresses import address
from publish.context import Link
from publish.context.procedures import Measured, ProcedureIndex, ProcedurePage
from publish.procedures.listing import entry_of, index_page
from publish.procedures.measured import of_procedure
from publish.procedures.places import FOLDERS, INDEX, ROOT, page_name, web
from publish.procedures.procedure import Procedure, Procedures
from publish.procedures.stages import stage_over
from publish.procedures.telling import (
    cautions_elsewhere,
    cautions_within,
    film_time,
    in_full,
    tools_and_materials,
    version_told,
)
from publish.wording import STANDING_CAUTION, count

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


def figures_of(one: Procedure) -> tuple[Measured, ...]:
    """What was measured in all versions: for the page and for the search."""
    owned = [(version.work, told) for version in one.versions for told in version.told]
    return of_procedure(owned, "figure", briefly=one.many)


def procedure_page(one: Procedure, shop: ShopSettings, figures: tuple[Measured, ...]) -> ProcedurePage:
    """The page of a procedure; `figures` are what was measured in it, by `figures_of`."""
    often = len(one.versions) >= _OFTEN
    stages = [stage_over(one, stage, number) for number, stage in enumerate(one.stages, 1)]
    apart = [stage.versions == 1 and often for stage in one.stages]
    tools, materials = tools_and_materials(one.versions)
    told = [version_told(version, preferred=at == one.pinned) for at, version in enumerate(one.versions)]
    every = f"{FOLDERS['every']}{address(one.slug)}.html"
    shown, others = _most_measured(figures) if one.many else (figures, ())
    return ProcedurePage(
        title=shop.title,
        name=one.name,
        by_hand=one.by_hand,
        author=shop.author,
        licence=shop.licence,
        assets=f"{ROOT}assets/",
        address=web(shop, f"{address(one.slug)}.html"),
        front=Link(f"{ROOT}index.html", shop.title),
        index=Link("index.html", "All procedures"),
        done=f"Done in {count(one.sessions, 'session')}",
        time=film_time(one),
        in_full=in_full(one),
        versions=tuple(reversed(told)),
        every=Link(every, "Every version in full") if one.many else None,
        stages=tuple(stage for stage, alone in zip(stages, apart, strict=True) if not alone),
        once=tuple(stage for stage, alone in zip(stages, apart, strict=True) if alone and not one.many),
        left_out=count(sum(apart), "other step") if one.many and any(apart) else "",
        figures=shown,
        others=others,
        standing_caution=STANDING_CAUTION,
        cautions=cautions_within(one, most=one.many),
        elsewhere=cautions_elsewhere(one, most=one.many),
        tools=tools,
        materials=materials,
    )


def _most_measured(figures: tuple[Measured, ...]) -> tuple[tuple[Measured, ...], tuple[Measured, ...]]:
    """What is drawn, and what else more than one session measured, both most often first."""
    by_often = sorted((one for one in figures if one.tallies and one.sessions > 1), key=lambda one: -one.sessions)
    return tuple(one for one in by_often if one.plot), tuple(one for one in by_often if not one.plot)
