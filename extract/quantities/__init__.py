"""Numbers with their units."""

from __future__ import annotations

from spacy.tokens import Doc

from extract.numbers.grammar import parse
from extract.quantities.choose import choose
from extract.quantities.draft import Draft, Scene
from extract.quantities.join import join
from extract.quantities.manner import is_difference, is_hedged, limit_of
from extract.quantities.refuse import refuse_all
from extract.quantities.scale import count_systems
from extract.quantities.supply import Neighbours, supply, unsettled
from extract.spans import Number, Quantity
from extract.trade import Trade


def find_quantities(doc: Doc, numbers: tuple[Number, ...], trade: Trade) -> tuple[Quantity, ...]:
    """The numbers that are quantities, in order; years, positions, counts and idioms are left out."""
    tape, parsed = parse(doc)
    wanted = set(numbers)
    scene = Scene(doc, tape, trade)
    drafts = join(tape, tuple(one for one in parsed if one.number in wanted))
    refused = refuse_all(scene, drafts)
    scene.learn(drafts, count_systems(drafts))
    kept: list[Draft] = []
    found: list[Quantity] = []
    for place, draft in enumerate(drafts):
        if place in refused:
            continue
        last = drafts[place - 1] if place and place - 1 not in refused else None
        settled = _settle(scene, draft, kept, last, drafts[place + 1 : place + 5])
        if settled is None:
            continue
        kept.append(settled)
        found.append(_quantity(scene, settled, said=draft.unit is not None))
    return tuple(found)


def _settle(
    scene: Scene, draft: Draft, kept: list[Draft], last: Draft | None, after: tuple[Draft, ...]
) -> Draft | None:
    if draft.unit:
        return choose(scene, draft)
    previous = kept[-1] if kept and last and kept[-1].start == last.start else None
    supplied = supply(scene, draft, Neighbours(kept, previous, list(after)))
    return supplied or (draft if unsettled(scene, draft) else None)


def _quantity(scene: Scene, draft: Draft, said: bool) -> Quantity:
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
        hedged=is_hedged(scene, draft),
        limit=limit_of(scene, draft),
        difference=is_difference(scene, draft),
    )
