"""Carrying rulings out on everything but findings."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from extract.record import Correction, Measure, Record, Step
from extract.rulings.errata import added_correction, follow_measure, proof_errata, ruled_correction
from extract.rulings.fate import Fate
from extract.rulings.kit import ruled_kit, with_kit
from extract.rulings.measures import added_measure, ruled_measure
from extract.rulings.model import Add, Kind, OnItem
from extract.rulings.order import put_in
from extract.rulings.remarks import ruled_remarks
from extract.rulings.shown import former_in, put_figure
from extract.rulings.slips import put_right_in
from extract.rulings.steps import Procedure


@dataclass(frozen=True, slots=True)
class Carried:
    """A record as ruled, its findings still the machine's."""

    record: Record
    struck: dict[str, str]
    """Ids of rulings by the ids of the items that they struck."""
    settled: dict[str, str]
    """Ids of rulings by the ids of the doubts that they settled."""
    failed: dict[str, str]
    """Why a ruling could not be carried out, by its id."""


def carry_out(record: Record, rulings: tuple[OnItem, ...], fates: dict[str, Fate]) -> Carried:
    """All rulings on items that are no findings.

    Each must be on an item of the record, or on one that a ruling makes.
    """
    corrections, denied = _corrections(record, rulings, fates)
    measures = _measures(record, corrections, rulings, fates)
    by_id = {one.id: one for one in measures}
    tools = ruled_kit("tool", record.tools, _added("tool", rulings), fates)
    materials = ruled_kit("material", record.materials, _added("material", rulings), fates)
    put_right = [put_right_in(step, by_id, corrections) for step in record.steps]
    steps_now = [with_kit(_following(step, by_id), tools, materials) for step in put_right]
    procedure = Procedure(steps_now, by_id)
    procedure.carry_out(one for one in rulings if one.on.kind == "step")
    steps = procedure.numbered()
    follow_ups = ruled_remarks("follow_up", record.follow_ups, _added("follow_up", rulings), fates)
    doubts = ruled_remarks("doubt", record.doubts, _added("doubt", rulings), fates)
    followed = [follow_measure(one, by_id) for one in corrections]
    changed = record.model_copy(
        update={
            "measures": measures,
            "corrections": put_in(followed, proof_errata(measures, steps)),
            "steps": steps,
            "follow_ups": follow_ups.kept,
            "doubts": doubts.kept,
            "tools": tools.kept,
            "materials": materials.kept,
        }
    )
    out = {one.id: one.ruling for one in measures} | {one.id: one.ruling for one in procedure.struck.values()}
    struck = {name: ruled.ruling for name, ruled in out.items() if ruled is not None and ruled.verdict == "strike"}
    struck |= {**denied, **follow_ups.struck, **doubts.struck, **tools.struck, **materials.struck}
    return Carried(changed, struck, doubts.settled, procedure.failed)


def _corrections(
    record: Record, rulings: tuple[OnItem, ...], fates: dict[str, Fate]
) -> tuple[list[Correction], dict[str, str]]:
    """The corrections that hold, and the rulings that denied the others."""
    held: list[Correction] = []
    denied: dict[str, str] = {}
    for one in put_in(record.corrections, [added_correction(add) for add in _added("correction", rulings)]):
        fate = fates.get(one.id)
        if fate is not None and fate.verdict == "strike":
            denied[one.id] = fate.ruling
        else:
            held.append(one if fate is None else ruled_correction(one, fate))
    return held, denied


def _measures(
    record: Record, corrections: list[Correction], rulings: tuple[OnItem, ...], fates: dict[str, Fate]
) -> tuple[Measure, ...]:
    """All measures in order of speaking, struck ones among them."""
    held = {one.id for one in corrections}
    taken_back = {add.withdraws.id: add.on.id for add in _added("correction", rulings) if add.withdraws is not None}
    measures = []
    for one in record.measures:
        measure = one
        if one.corrected_by is not None and one.corrected_by not in held:
            measure = one.model_copy(update={"stands": True, "corrected_by": None})
        if taken_back.get(one.id) in held:
            measure = one.model_copy(update={"stands": False, "corrected_by": taken_back[one.id]})
        measures.append(ruled_measure(measure, fates.get(one.id)))
    return put_in(measures, [added_measure(add, fates.get(add.on.id)) for add in _added("measure", rulings)])


def _following(step: Step, measures: dict[str, Measure]) -> Step:
    """A step whose words show a figure that was amended, with the amended one."""
    text = step.text
    for name in step.measures:
        former = former_in(text, measures[name]) if name in measures else None
        if former is not None:
            text = put_figure(text, former, measures[name].display)
    return step if text == step.text else step.model_copy(update={"text": text})


def _added(kind: Kind, rulings: Iterable[OnItem]) -> list[Add]:
    return [one for one in rulings if isinstance(one, Add) and one.on.kind == kind]
