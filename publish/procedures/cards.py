"""The bench card of a procedure: the version that a person prefers, on one sheet of A4 or Letter."""

from __future__ import annotations

from dataclasses import replace

from capture.shop import ShopSettings
from publish.addresses import absolute
from publish.card import card_figure, card_step, is_wait, wait_for
from publish.context import Card, CardFigure, Link, Wait
from publish.moments import Moment
from publish.procedures.places import card_name
from publish.procedures.procedure import Procedure, VersionDone
from publish.said import said_figure
from publish.wording import STANDING_CAUTION, sentence

_ROOT = "../../"
"""From the cards' folder to the front page's."""


def make_procedure_card(procedure: Procedure, shop: ShopSettings) -> Card | None:
    """The card; null where no version is preferred."""
    if procedure.pinned is None:
        return None
    version = procedure.versions[procedure.pinned]
    work = version.work
    site = absolute(shop.site_address)
    steps = tuple(
        card_step(number, sentence(step.text), step.mode, (told.row for told in step.told))
        for number, step in enumerate(version.steps, 1)
    )
    tools = tuple(dict.fromkeys(name for step in version.steps for name in step.tools))
    materials = tuple(dict.fromkeys(name for step in version.steps for name in step.materials))
    # Every caution of the session goes with it, those of its own course first.
    others = tuple(one for one in work.cautions if one not in version.cautions)
    cautions = tuple(replace(one, moment=_from_cards(one.moment)) for one in (*version.cautions, *others))
    figures, waits = _figures(version), _waits(version)
    return Card(
        title=procedure.name,
        subject=work.subject,
        source=", ".join(part for part in (work.title, work.date_text) if part),
        author=shop.author,
        licence=shop.licence,
        assets=f"{_ROOT}assets/",
        address=f"{site}{card_name(procedure.slug)}" if site else None,
        session=Link(f"../{work.href}#{version.steps[0].anchor}", work.title),
        proof=work.proof,
        standing_caution=STANDING_CAUTION,
        cautions=cautions,
        tools=tools,
        materials=materials,
        figures=figures,
        waits=waits,
        steps=steps,
    )


def _from_cards(moment: Moment) -> Moment:
    return moment if moment.href is None else replace(moment, href=f"../{moment.href}")


def _figures(version: VersionDone) -> tuple[CardFigure, ...]:
    """What to work to that no step shows: aims, then figures as left."""
    return tuple(
        card_figure(one.row) for phase in ("target", "as_left") for one in version.loose if one.measure.phase == phase
    )


def _waits(version: VersionDone) -> tuple[Wait, ...]:
    return tuple(
        Wait(number, wait_for(told.measure), said_figure(told.measure))
        for number, step in enumerate(version.steps, 1)
        for told in step.told
        if is_wait(told.measure)
    )
