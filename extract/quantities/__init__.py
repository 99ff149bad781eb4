"""Numbers with their units."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from spacy.tokens import Doc

from extract.numbers.grammar import parse
from extract.quantities.candidate import Neighbours
from extract.quantities.chains import find_sides, link
from extract.quantities.choose import choose
from extract.quantities.draft import Draft
from extract.quantities.form import is_translation, says_inch
from extract.quantities.join import join
from extract.quantities.knowledge import knowledge
from extract.quantities.manner import is_difference, is_hedged, limit_of, tolerance_of
from extract.quantities.recall import Recall
from extract.quantities.refusals import refuse_all
from extract.quantities.scale import count_systems
from extract.quantities.scene import Scene
from extract.quantities.supply import supply, unsettled
from extract.spans import Number, Quantity
from extract.trade import Trade
from extract.units import UnitError, interval_to_unit


def find_quantities(doc: Doc, numbers: tuple[Number, ...], trade: Trade) -> tuple[Quantity, ...]:
    """The numbers that are quantities, in order; years, positions, counts and idioms are left out."""
    tape, parsed = parse(doc)
    wanted = set(numbers)
    scene = Scene(doc, tape, trade)
    drafts = join(tape, tuple(one for one in parsed if one.number in wanted))
    scene.learn(drafts, count_systems(drafts))
    scene.sides = find_sides(scene, drafts)
    refused = refuse_all(scene, drafts)
    kept: list[Draft] = []
    said: list[bool] = []
    recall = Recall()
    reach = knowledge().evidence.reach_measures
    for place, draft in enumerate(drafts):
        if place in refused:
            continue
        beside = place > 0 and bool(kept) and kept[-1].start == drafts[place - 1].start
        named = scene.attributes(draft)
        again = recall.like(draft) or recall.told(named)
        after = list(drafts[place + 1 : place + 5])
        counted = drafts[place - 1] if place and not beside and drafts[place - 1].number.form == "integer" else None
        settled = _settle(scene, draft, Neighbours(kept[-reach:], again, kept[-1] if beside else None, after, counted))
        if settled is None:
            continue
        translated = is_translation(settled, kept[-1] if kept else None, draft.unit is not None)
        settled = replace(settled, translated=translated)
        kept.append(settled)
        recall.keep(settled, named)
        scene.hear(settled)
        said.append(draft.unit is not None or says_inch(scene, draft))
    return _quantities(scene, kept, said)


def _quantities(scene: Scene, kept: list[Draft], said: list[bool]) -> tuple[Quantity, ...]:
    """The drafts with how they were said; a tolerance is a difference, and goes to its figure too."""
    found: list[Quantity] = []
    for place, draft in enumerate(kept):
        before = kept[place - 1] if place else None
        if before and tolerance_of(scene, before, draft) and (slack := _slack(before, draft)) is not None:
            found[-1] = replace(found[-1], tolerance=slack)
            found.append(_quantity(scene, draft, said[place], hedged=False, difference=True))
            continue
        earlier = before.end if before else 0
        later = kept[place + 1].start if place + 1 < len(kept) else len(scene.tape)
        joined = link(scene, before, draft) if before else None
        hedged = bool(joined and joined.by and found[-1].hedged) or is_hedged(scene, draft, earlier, later)
        found.append(_quantity(scene, draft, said[place], hedged))
    return tuple(found)


def _slack(draft: Draft, other: Draft) -> Fraction | None:
    """A tolerance in the unit of its figure, None where it measures something else."""
    if draft.unit is None or other.unit is None:
        return None
    try:
        return interval_to_unit(other.number.value, other.unit, draft.unit)
    except UnitError:
        return None


def _settle(scene: Scene, draft: Draft, near: Neighbours) -> Draft | None:
    if draft.unit:
        return choose(scene, draft)
    return supply(scene, draft, near) or (draft if unsettled(scene, draft) else None)


def _quantity(scene: Scene, draft: Draft, said: bool, hedged: bool, difference: bool = False) -> Quantity:
    number = draft.number
    return Quantity(
        start=number.start,
        end=scene.tape.lexemes[draft.end - 1].token + 1,
        value=number.value,
        low=number.low,
        high=number.high,
        unit=draft.unit,
        unit_said=said,
        number=number,
        hedged=hedged,
        limit=limit_of(scene, draft),
        difference=difference or is_difference(scene, draft),
    )
