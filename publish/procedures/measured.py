"""What was measured in a procedure, over all versions: the middle, the least and the most, each figure with its second.

Only what stands after a person's rulings is here at all; what has to be settled first, and one-sided limits, are listed
and not counted.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from extract.record import Measure, Phase
from publish.context import Link
from publish.context.library import Telling
from publish.context.procedures import Measured
from publish.library.common import Ends, common_scale
from publish.library.lanes import draw_lanes
from publish.library.tallies import tallies_of
from publish.library.works import folded
from publish.procedures.work import SessionWork, Told
from publish.wording import PHASES, sentence

FEWEST_SESSIONS = 3
"""For a plot."""
MOST_DRAWN = 8
"""Things that are drawn on a page that tells many versions briefly."""
Owned = tuple[SessionWork, Told]


def of_step(owned: Sequence[Owned], anchor: str, *, briefly: bool = False) -> tuple[Measured, ...]:
    """What was measured in a step: by attribute and kind, since each film calls the item what it will.

    `briefly` leaves out plots and the single figures.
    """
    found = _grouped(owned, lambda one: (folded(one.attribute), one.kind or ""))
    return tuple(
        _measured(of, f"{anchor}-{number}", item=False, plotted=not briefly, told=not briefly)
        for number, of in enumerate(found.values(), 1)
    )


def of_procedure(owned: Sequence[Owned], anchor: str, *, briefly: bool = False) -> tuple[Measured, ...]:
    """What was found, aimed at and left, by attribute, item and kind; a figure of nothing named has no place here.

    `briefly` draws what most sessions measured alone, counts what several did, and leaves out the single figures.
    """
    found = things_of(owned)
    drawn = set(range(len(found)))
    if briefly:
        often = [len({work.slug for work, _ in of}) for of in found]
        drawn = set(sorted(drawn, key=lambda at: (-often[at], at))[:MOST_DRAWN])
    return tuple(
        _measured(of, f"{anchor}-{at + 1}", item=True, plotted=at in drawn, told=not briefly)
        for at, of in enumerate(found)
    )


def things_of(owned: Sequence[Owned]) -> list[list[Owned]]:
    """The figures of each thing that `of_procedure` tells of, in its order."""
    return list(_grouped(_named(owned), _thing).values())


def _named(owned: Sequence[Owned]) -> list[Owned]:
    return [one for one in owned if one[1].measure.attribute and one[1].measure.kind]


def _thing(one: Measure) -> tuple[str, ...]:
    return folded(one.attribute), folded(one.item), one.kind or ""


def _grouped(owned: Sequence[Owned], thing: Callable[[Measure], tuple[str, ...]]) -> dict[tuple[str, ...], list[Owned]]:
    found: dict[tuple[str, ...], list[Owned]] = {}
    for one in owned:
        found.setdefault(thing(one[1].measure), []).append(one)
    return found


def _measured(owned: Sequence[Owned], anchor: str, *, item: bool, plotted: bool, told: bool) -> Measured:
    sessions = len({work.slug for work, _ in owned})
    scale = common_scale(one.measure for _, one in owned) if told or not item or sessions > 1 else None
    counted = [
        (work.slug, one.measure.phase, ends)
        for work, one in owned
        if scale is not None and one.settled and one.measure.limit is None
        if (ends := scale.ends(one.measure)) is not None
    ]
    placed: list[tuple[Phase, Ends]] = [(phase, ends) for _, phase, ends in counted]
    what = _what(owned[0][1], item=item)
    often = len({slug for slug, _, _ in counted}) >= FEWEST_SESSIONS
    return Measured(
        anchor=anchor,
        what=what,
        tallies=tallies_of(placed, scale) if scale and placed else (),
        plot=draw_lanes(what, placed, scale, ()) if scale and often and plotted else None,
        tellings=tuple(_telling(work, one) for work, one in owned) if told else (),
        sessions=sessions,
    )


def _what(told: Told, *, item: bool) -> str:
    measure = told.measure
    named = (measure.attribute, measure.item if item else None) if measure.attribute else (measure.kind or "figure",)
    return sentence(", ".join(one for one in named if one)).rstrip(".")


def _telling(work: SessionWork, told: Told) -> Telling:
    return Telling(
        row=told.row,
        phase=PHASES[told.measure.phase],
        session=Link(f"{work.href}#{told.row.anchor}", work.title),
        date=work.date,
        date_text=work.date_text,
        moment=told.row.moment,
        settled=told.settled,
    )
