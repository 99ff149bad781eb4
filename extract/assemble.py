"""From what the stages found on a `Doc` to a `Record`."""

from __future__ import annotations

from fractions import Fraction

from spacy.tokens import Doc

from extract.display import show
from extract.heard import heard_of
from extract.ids import Mint
from extract.narration import Narration, narration_of
from extract.record import (
    Caution,
    Correction,
    Measure,
    Mention,
    Record,
    Remark,
    SessionFacts,
    Step,
    Withdrawn,
)
from extract.spans import Action, Measured, Named, Note, Remarks, Takeback, Warned

_BEFORE, _BEHIND = 24, 10
"""Tokens of a figure's surroundings that a check may read."""


def assemble(doc: Doc, facts: SessionFacts) -> Record:
    """The record of a narration, without findings: those need the whole record."""
    where = narration_of(doc)
    takebacks: tuple[Takeback, ...] = doc._.corrections
    corrected = {measure: taken.id for taken in takebacks for measure in taken.withdrawn_measures}
    found: tuple[Measured, ...] = doc._.measures
    said = _surroundings(doc, where, found)
    measures = tuple(_measure(doc, where, one, corrected.get(one.id), said[one.id]) for one in found)
    remarks: Remarks = doc._.remarks
    tools = _mentions(where, remarks.tools)
    materials = _mentions(where, remarks.materials)
    return Record(
        session=facts,
        measures=measures,
        corrections=tuple(_correction(doc, where, taken, {m.id: m for m in measures}) for taken in takebacks),
        steps=_steps(doc, where, doc._.steps, remarks),
        cautions=tuple(_caution(where, one) for one in remarks.cautions),
        materials=materials,
        tools=tools,
        follow_ups=_remarks("l", where, remarks.follow_ups),
        doubts=_remarks("d", where, remarks.doubts),
    )


def _number(value: Fraction | None) -> float | None:
    return None if value is None else float(value)


def _surroundings(doc: Doc, where: Narration, found: tuple[Measured, ...]) -> dict[str, tuple[str, str]]:
    """The words before and behind each figure, never those of another figure."""
    spans = sorted((one.quantity.start, one.quantity.end, one.id) for one in found)
    ends = [0, *(end for _, end, _ in spans)]
    begins = [*(start for start, _, _ in spans), len(doc)]
    return {
        name: (
            where.quote(doc, min(max(ends[at], start - _BEFORE), start), start),
            where.quote(doc, end, max(min(begins[at + 1], end + _BEHIND), end)),
        )
        for at, (start, end, name) in enumerate(spans)
    }


def _measure(
    doc: Doc, where: Narration, one: Measured, corrected_by: str | None, surroundings: tuple[str, str]
) -> Measure:
    quantity = one.quantity
    unit = quantity.unit
    return Measure(
        id=one.id,
        cue=where.cue[quantity.start],
        start=round(where.start[quantity.start], 3),
        end=round(where.end[quantity.end - 1], 3),
        quote=where.quote(doc, quantity.start, quantity.end),
        value=float(quantity.value),
        low=_number(quantity.low),
        high=_number(quantity.high),
        unit=unit.name if unit else None,
        unit_said=quantity.unit_said,
        ucum=unit.ucum if unit else None,
        attribute=one.attribute,
        item=one.item,
        where=one.where,
        phase=one.phase,
        hedged=quantity.hedged,
        stands=corrected_by is None,
        corrected_by=corrected_by,
        kind=unit.kind if unit else None,
        limit=quantity.limit,
        tolerance=_number(quantity.tolerance),
        difference=quantity.difference,
        same_as=one.same_as,
        heard=heard_of(doc, where, quantity),
        display=show(quantity),
        before=surroundings[0],
        after=surroundings[1],
    )


def _correction(doc: Doc, where: Narration, taken: Takeback, measures: dict[str, Measure]) -> Correction:
    holds = measures.get(taken.replacement_measure or "")
    return Correction(
        id=taken.id,
        cue=where.cue[taken.start],
        start=round(where.start[taken.start], 3),
        end=round(where.end[taken.end - 1], 3),
        quote=where.quote(doc, taken.start, taken.end),
        scope=taken.scope,
        withdraws=Withdrawn(
            measure=taken.withdrawn_measures[0] if taken.withdrawn_measures else None,
            text=taken.withdrawn_text,
            cue=taken.withdrawn_cue,
        ),
        replacement=taken.replacement,
        value=holds.value if holds and holds.unit else _number(taken.replacement_value),
        unit=holds.unit if holds else taken.replacement_unit.name if taken.replacement_unit else None,
        replacement_measure=taken.replacement_measure,
    )


def _steps(doc: Doc, where: Narration, actions: tuple[Action, ...], remarks: Remarks) -> tuple[Step, ...]:
    mint = Mint()
    measures: tuple[Measured, ...] = doc._.measures
    steps = []
    for number, action in enumerate(sorted(actions, key=lambda a: (a.order, a.start)), start=1):
        span = range(action.start, action.end)
        quote = where.quote(doc, action.start, action.end)
        steps.append(
            Step(
                id=mint.mint("s", action.verb, action.object, quote),
                number=number,
                cue_from=where.cue[action.start],
                cue_to=where.cue[action.end - 1],
                start=round(where.start[action.start], 3),
                end=round(where.end[action.end - 1], 3),
                quote=quote,
                text=action.text,
                verb=action.verb,
                object=action.object,
                mode=action.mode,
                measures=tuple(m.id for m in measures if m.quantity.start in span),
                tools=tuple(one.name for one in remarks.tools if any(at in span for at in one.at)),
                materials=tuple(one.name for one in remarks.materials if any(at in span for at in one.at)),
            )
        )
    return tuple(steps)


def _caution(where: Narration, one: Warned) -> Caution:
    return Caution(
        cue=where.cue[one.start],
        start=round(where.start[one.start], 3),
        text=one.text,
        source=one.source,
        said=one.said,
    )


def _mentions(where: Narration, named: tuple[Named, ...]) -> tuple[Mention, ...]:
    return tuple(Mention(name=one.name, cues=tuple(sorted({where.cue[at] for at in one.at}))) for one in named)


def _remarks(prefix: str, where: Narration, notes: tuple[Note, ...]) -> tuple[Remark, ...]:
    mint = Mint()
    return tuple(
        Remark(
            id=mint.mint(prefix, note.text),
            cue=where.cue[note.start],
            start=round(where.start[note.start], 3),
            text=note.text,
        )
        for note in notes
    )
