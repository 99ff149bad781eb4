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
Owned = tuple[SessionWork, Told]


def of_step(owned: Sequence[Owned], anchor: str) -> tuple[Measured, ...]:
    """What was measured in a step: by attribute and kind, since each film calls the item what it will."""
    return _by(owned, anchor, lambda one: (folded(one.attribute), one.kind or ""))


def of_procedure(owned: Sequence[Owned], anchor: str) -> tuple[Measured, ...]:
    """What was found, aimed at and left, by attribute, item and kind; a figure of nothing named has no place here."""
    return _by(_named(owned), anchor, _thing)


def things_of(owned: Sequence[Owned]) -> list[list[Owned]]:
    """The figures of each thing that `of_procedure` tells of, in its order."""
    return list(_grouped(_named(owned), _thing).values())


def _named(owned: Sequence[Owned]) -> list[Owned]:
    return [one for one in owned if one[1].measure.attribute and one[1].measure.kind]


def _thing(one: Measure) -> tuple[str, ...]:
    return folded(one.attribute), folded(one.item), one.kind or ""


def _by(owned: Sequence[Owned], anchor: str, thing: Callable[[Measure], tuple[str, ...]]) -> tuple[Measured, ...]:
    found = _grouped(owned, thing)
    return tuple(
        _measured(of, f"{anchor}-{number}", item=len(key) == 3) for number, (key, of) in enumerate(found.items(), 1)
    )


def _grouped(owned: Sequence[Owned], thing: Callable[[Measure], tuple[str, ...]]) -> dict[tuple[str, ...], list[Owned]]:
    found: dict[tuple[str, ...], list[Owned]] = {}
    for one in owned:
        found.setdefault(thing(one[1].measure), []).append(one)
    return found


def _measured(owned: Sequence[Owned], anchor: str, *, item: bool) -> Measured:
    scale = common_scale(told.measure for _, told in owned)
    counted = [
        (work.slug, told.measure.phase, ends)
        for work, told in owned
        if scale is not None and told.settled and told.measure.limit is None
        if (ends := scale.ends(told.measure)) is not None
    ]
    placed: list[tuple[Phase, Ends]] = [(phase, ends) for _, phase, ends in counted]
    what = _what(owned[0][1], item=item)
    often = len({slug for slug, _, _ in counted}) >= FEWEST_SESSIONS
    return Measured(
        anchor=anchor,
        what=what,
        tallies=tallies_of(placed, scale) if scale and placed else (),
        plot=draw_lanes(what, placed, scale, ()) if scale and often else None,
        tellings=tuple(_telling(work, told) for work, told in owned),
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
