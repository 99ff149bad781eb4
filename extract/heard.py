"""How sure the ear was of a figure, and what else it may have been."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

import spacy
from spacy.language import Language
from spacy.tokens import Doc

from capture.transcript import HeardFigure, HeardReading
from extract.narration import Narration
from extract.numbers.figure import Tape
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
    others = (_reading(one, chosen, figure, quantity) for one in rivals)
    return Heard(
        confidence=figure.confidence,
        readings=(first, *(one for one in others if one is not None)),
        near_tie=figure.near_tie,
    )


def _figure_at(figures: tuple[HeardFigure, ...], start: float, end: float) -> HeardFigure | None:
    """The figure heard twice that holds the middle of a measure."""
    middle = (start + end) / 2
    return next((one for one in figures if one.start <= middle <= one.end), None)


def _reading(one: HeardReading, chosen: HeardReading, figure: HeardFigure, quantity: Quantity) -> Reading | None:
    """A rival with the figure that it has in this one's place.

    None where several figures were heard in one breath and the rival is about another of them: "eleven thirty-seconds,
    which leaves nine" is no doubt about the eleven where only nine may have been five.
    """
    held, rival = _Said.of(chosen.text), _Said.of(one.text)
    at = held.place_of(quantity)
    draft = rival.instead_of(held, at)
    if draft is None and len(held.drafts) > 1 and not rival.lacks(held, at):
        return None
    named = (draft.unit or quantity.unit) if draft else None
    return Reading(
        text=rival.words(draft) if draft and len(held.drafts) > 1 else one.text,
        value=float(draft.number.value) if draft else None,
        unit=named.name if named else None,
        score=one.score,
        first_heard=one.text == figure.first_heard,
    )


@dataclass(frozen=True, slots=True)
class _Said:
    """A reading with the figures in it."""

    doc: Doc
    tape: Tape
    drafts: tuple[Draft, ...]

    @classmethod
    def of(cls, text: str) -> _Said:
        doc = plain_language().make_doc(text)
        tape, parsed = parse(doc)
        return cls(doc, tape, join(tape, parsed))

    def place_of(self, quantity: Quantity) -> int | None:
        """Which of its figures is this quantity."""
        same = [at for at, draft in enumerate(self.drafts) if draft.number.value == quantity.value]
        return same[0] if same else 0 if len(self.drafts) == 1 else None

    def instead_of(self, held: _Said, at: int | None) -> Draft | None:
        """Its figure in the place of `held`'s one; None where it has the same, or none."""
        own = [draft for draft in self.drafts if _key(draft) not in {_key(one) for one in held.drafts}]
        if at is None or len(held.drafts) == 1:
            return own[0] if own else None
        if len(self.drafts) == len(held.drafts):
            return self.drafts[at] if _key(self.drafts[at]) != _key(held.drafts[at]) else None
        return own[0] if own and self.lacks(held, at) else None

    def lacks(self, held: _Said, at: int | None) -> bool:
        """It does not hold that figure any more."""
        return at is not None and _key(held.drafts[at]) not in {_key(draft) for draft in self.drafts}

    def words(self, draft: Draft) -> str:
        """A figure of it in its words."""
        lexemes = self.tape.lexemes
        return self.doc[lexemes[draft.start].token : lexemes[draft.end - 1].token + 1].text


def _key(draft: Draft) -> tuple[Fraction, Unit | None]:
    return draft.number.value, draft.unit


@cache
def plain_language() -> Language:
    """A tokeniser alone, for a figure that stands by itself."""
    return spacy.blank("en")
