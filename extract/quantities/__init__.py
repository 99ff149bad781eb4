"""Numbers with their units."""

from __future__ import annotations

from spacy.tokens import Doc

from extract.numbers.grammar import parse
from extract.quantities.draft import Draft, Scene
from extract.quantities.join import join
from extract.quantities.manner import is_difference, is_hedged, limit_of
from extract.quantities.refuse import refused
from extract.quantities.supply import supply
from extract.spans import Number, Quantity
from extract.trade import Trade


def find_quantities(doc: Doc, numbers: tuple[Number, ...], trade: Trade) -> tuple[Quantity, ...]:
    """The numbers that are quantities, in order; years, positions, counts and idioms are left out."""
    tape, parsed = parse(doc)
    wanted = set(numbers)
    parsed = tuple(one for one in parsed if one.number in wanted)
    scene = Scene(doc, tape, trade)
    drafts = [draft for draft in join(tape, parsed) if refused(scene, draft) is None]
    kept: list[Draft] = []
    found: list[Quantity] = []
    for place, draft in enumerate(drafts):
        with_unit = draft if draft.unit else supply(scene, draft, kept, drafts[place + 1 : place + 2])
        if with_unit is None:
            continue
        kept.append(with_unit)
        found.append(_quantity(scene, with_unit, said=draft.unit is not None))
    return tuple(found)


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
