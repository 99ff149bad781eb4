"""Corrections as a person has them: accepted, denied, and those that proofing adds.

What was said wrong on film is an erratum; what was only heard wrong, or is put in other words, is none.
"""

from __future__ import annotations

from collections.abc import Iterable

from extract.record import Correction, Former, Measure, Ruled, Step, Withdrawn
from extract.rulings.fate import Fate
from extract.rulings.made import new_id
from extract.rulings.model import Add
from extract.units import unit_rows

_PLACES = ("attribute", "item", "where")


def ruled_correction(correction: Correction, fate: Fate) -> Correction:
    """An accepted or amended correction."""
    ruled = Ruled(verdict=fate.verdict, ruling=fate.ruling, because=fate.because)
    if fate.verdict != "amend":
        return correction.model_copy(update={"ruling": ruled})
    was = Former(text=correction.replacement, value=correction.value, unit=correction.unit)
    update: dict[str, object] = {"ruling": ruled.model_copy(update={"was": was}), "replacement_measure": None}
    if fate.to.figure is not None:
        figure = fate.to.figure
        update |= {"value": float(figure.value), "unit": figure.unit, "replacement": figure.display}
    if fate.to.text:
        update["replacement"] = fate.to.text
        if fate.to.figure is None:
            update |= {"value": None, "unit": None}
    return correction.model_copy(update=update)


def added_correction(add: Add) -> Correction:
    """ "Said wrong on film, right is ...": what a person puts right without the speaker having done so."""
    figure = add.to.figure
    return Correction(
        id=add.on.id,
        cue=add.on.cue,
        start=add.on.start,
        end=add.on.start,
        quote=add.on.words,
        scope="this_session",
        withdraws=Withdrawn(measure=add.withdraws.id if add.withdraws else None, text=add.on.words, cue=add.on.cue),
        replacement=add.to.text or (figure.display if figure else ""),
        value=float(figure.value) if figure else None,
        unit=figure.unit if figure else None,
        source="proof",
        ruling=Ruled(verdict="add", ruling=add.id),
    )


def follow_measure(correction: Correction, measures: dict[str, Measure]) -> Correction:
    """A correction whose right figure was amended gives the amended one."""
    holds = measures.get(correction.replacement_measure or "")
    if holds is None or holds.ruling is None or holds.ruling.was is None or holds.ruling.was.display is None:
        return correction
    unit = unit_rows()[holds.unit].unit.name if holds.unit in unit_rows() else None
    return correction.model_copy(update={"replacement": holds.display, "value": holds.value, "unit": unit})


def proof_errata(measures: Iterable[Measure], steps: Iterable[Step]) -> list[Correction]:
    """An erratum for each item that a person amended because it was said wrong."""
    return [
        *(_of_measure(one, one.ruling) for one in measures if one.ruling is not None and _is_erratum(one.ruling)),
        *(_of_step(one, one.ruling) for one in steps if one.ruling is not None and _is_erratum(one.ruling)),
    ]


def _is_erratum(ruled: Ruled) -> bool:
    changed = ruled.was is not None and ruled.was != Former()
    return ruled.verdict == "amend" and ruled.because == "said_wrong" and changed


def _of_measure(measure: Measure, ruled: Ruled) -> Correction:
    """A measure as said, and as it should have been; with the item or place where that was said wrong."""
    was = ruled.was or Former()
    places = [(getattr(was, name), getattr(measure, name)) for name in _PLACES]
    changed = [(before, now) for before, now in places if before is not None and before != now]
    return Correction(
        id=new_id("correction", ruled.ruling),
        cue=measure.cue,
        start=measure.start,
        end=measure.end,
        quote=measure.quote,
        scope="this_session",
        withdraws=Withdrawn(
            measure=measure.id, text=", ".join([measure.quote, *(before for before, _ in changed)]), cue=measure.cue
        ),
        replacement=", ".join([measure.display, *(now for _, now in changed if now)]),
        value=measure.value,
        unit=measure.unit,
        replacement_measure=measure.id,
        source="later_session" if ruled.later else "proof",
        ruling=ruled,
    )


def _of_step(step: Step, ruled: Ruled) -> Correction:
    return Correction(
        id=new_id("correction", ruled.ruling),
        cue=step.cue_from,
        start=step.start,
        end=step.end,
        quote=step.quote,
        scope="this_session",
        withdraws=Withdrawn(text=step.quote, cue=step.cue_from),
        replacement=ruled.later.replacement if ruled.later else step.text,
        source="later_session" if ruled.later else "proof",
        ruling=ruled,
    )
