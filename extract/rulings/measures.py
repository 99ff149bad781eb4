"""Measures as a person has them: amended, struck, let stand, added."""

from __future__ import annotations

from fractions import Fraction

from extract.record import Former, Measure, Ruled
from extract.rulings.fate import Fate
from extract.rulings.model import Add, Changes, Figure
from extract.units import unit_rows

_PLACES = ("attribute", "item", "where")


def ruled_measure(measure: Measure, fate: Fate | None) -> Measure:
    """A measure with its fate: a struck one no longer stands, an amended one keeps what it was."""
    if fate is None:
        return measure
    ruled = Ruled(verdict=fate.verdict, ruling=fate.ruling, because=fate.because, later=fate.later)
    if fate.verdict == "strike":
        return measure.model_copy(update={"stands": False, "corrected_by": None, "ruling": ruled})
    if fate.verdict == "stet":
        return measure.model_copy(update={"ruling": ruled})
    changed = {name: to for name, to in _changed(fate.to, measure).items() if to != getattr(measure, name)}
    was = Former.model_validate({name: getattr(measure, name) for name in changed if name in Former.model_fields})
    return measure.model_copy(update={**changed, "ruling": ruled.model_copy(update={"was": was})})


def added_measure(add: Add, fate: Fate | None) -> Measure:
    """A measure that the machine missed, with whatever was ruled on it since."""
    bare = Measure(
        id=add.on.id, cue=add.on.cue, start=add.on.start, end=add.on.start, quote=add.on.words,
        value=0.0, unit=None, unit_said=True, phase="general", hedged=False,
    )  # fmt: skip
    to = add.to
    if fate is not None and fate.verdict == "amend":
        to = to.model_copy(update={name: getattr(fate.to, name) for name in fate.to.named})
    update: dict[str, object] = {**_changed(to, bare), "ruling": Ruled(verdict="add", ruling=add.id)}
    if fate is not None and fate.verdict == "strike":
        update |= {"stands": False, "ruling": Ruled(verdict="strike", ruling=fate.ruling)}
    return bare.model_copy(update=update)


def _changed(to: Changes, measure: Measure) -> dict[str, object]:
    """The fields that change, with what they change to."""
    changed: dict[str, object] = {name: getattr(to, name) or None for name in _PLACES if getattr(to, name) is not None}
    if to.phase is not None:
        changed["phase"] = to.phase
    if to.figure is not None:
        changed |= _figure(to.figure)
        if measure.heard is not None:  # the person has listened again, and said which it was
            changed["heard"] = measure.heard.model_copy(update={"near_tie": False})
    return changed


def _figure(figure: Figure) -> dict[str, object]:
    unit = unit_rows()[figure.unit].unit if figure.unit in unit_rows() else None
    return {
        "value": float(figure.value),
        "low": _float(figure.low),
        "high": _float(figure.high),
        "unit": figure.unit,
        "unit_said": True,
        "ucum": unit.ucum if unit else None,
        "kind": unit.kind if unit else None,
        "hedged": figure.hedged,
        "limit": figure.limit,
        "tolerance": _float(figure.tolerance),
        "display": figure.display,
    }


def _float(value: Fraction | None) -> float | None:
    return None if value is None else float(value)
