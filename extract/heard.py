"""How sure the ear was of a figure, and what else it may have been."""

from __future__ import annotations

from functools import cache

import spacy
from spacy.language import Language
from spacy.tokens import Doc

from capture.transcript import HeardFigure, HeardReading
from extract.narration import Narration
from extract.numbers.grammar import parse
from extract.quantities.draft import Draft
from extract.quantities.join import join
from extract.record import Heard, Reading
from extract.spans import Quantity, Unit


def heard_of(doc: Doc, where: Narration, quantity: Quantity) -> Heard | None:
    """What the hearing says of a figure; null for captions.

    Without a second hearing it is as sure as the figure's least sure word: one wrong word makes it another figure.
    """
    sure = [p for p in where.probability[quantity.start : quantity.end] if p is not None]
    if not sure:
        return None
    quote = where.quote(doc, quantity.start, quantity.end)
    unit = quantity.unit
    decided = Reading(text=quote, value=float(quantity.value), unit=unit.name if unit else None)
    begin, end = where.start[quantity.start], where.end[quantity.end - 1]
    figure = _figure_at(where.transcript.figures, begin, end)
    if figure is None:
        score = round(min(sure), 4)
        first = decided.model_copy(update={"score": score, "first_heard": True})
        return Heard(confidence=score, readings=(first,))
    chosen, *rivals = figure.readings
    first = decided.model_copy(update={"score": chosen.score, "first_heard": chosen.text == figure.first_heard})
    return Heard(
        confidence=figure.confidence,
        readings=(first, *(_reading(one, chosen, figure, unit) for one in rivals)),
        near_tie=figure.near_tie,
    )


def _figure_at(figures: tuple[HeardFigure, ...], start: float, end: float) -> HeardFigure | None:
    """The figure heard twice that holds the middle of a measure."""
    middle = (start + end) / 2
    return next((one for one in figures if one.start <= middle <= one.end), None)


def _reading(one: HeardReading, chosen: HeardReading, figure: HeardFigure, unit: Unit | None) -> Reading:
    """A rival with the figure that it has where the decided reading has another."""
    held = [(draft.number.value, draft.unit) for draft in _drafts(chosen.text)]
    own = [draft for draft in _drafts(one.text) if (draft.number.value, draft.unit) not in held]
    draft = own[0] if own else None
    named = (draft.unit or unit) if draft else None
    return Reading(
        text=one.text,
        value=float(draft.number.value) if draft else None,
        unit=named.name if named else None,
        score=one.score,
        first_heard=one.text == figure.first_heard,
    )


def _drafts(text: str) -> tuple[Draft, ...]:
    return join(*parse(plain_language().make_doc(text)))


@cache
def plain_language() -> Language:
    """A tokeniser alone, for a figure that stands by itself."""
    return spacy.blank("en")
