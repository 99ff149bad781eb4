"""How a figure reads while it is typed: its unit checked, and the figure in the other system beside it."""

from __future__ import annotations

from dataclasses import dataclass

from desk.proof.work import Work
from extract.record import Measure
from extract.rulings import FigureError, UnitKindError
from extract.rulings.figures import check_unit, read_figure
from extract.rulings.findings import trade_of
from extract.rulings.model import Figure
from publish.other_units import in_other_units


@dataclass(frozen=True, slots=True)
class Read:
    """What was made of the typed words."""

    display: str = ""
    other: str = ""
    problem: str = ""
    overrule: bool = False
    """The problem is one that a person may overrule."""


def read_typed(work: Work, item_id: str, text: str, attribute: str = "") -> Read:
    """A typed figure as it would be taken for a measure; a bare number takes the unit that the measure has.

    `attribute` is what a measure that is still to be added measures.
    """
    measure = next((one for one in work.proofed.record.measures if one.id == item_id), None)
    try:
        figure = read_figure(text, measure.unit if measure else None)
    except FigureError as error:
        return Read(problem=str(error))
    other = in_other_units(_shown(measure or _BARE, figure))
    try:
        check_unit(figure, measure.attribute if measure else attribute or None, trade_of(work.proofed.machine))
    except UnitKindError as error:
        return Read(figure.display, other or "", str(error), overrule=True)
    return Read(figure.display, other or "")


_BARE = Measure(
    id="", cue=0, start=0, end=0, quote="", value=0, unit=None, unit_said=True, phase="general", hedged=False
)
"""A measure of which nothing is known but the figure."""


def _shown(measure: Measure, figure: Figure) -> Measure:
    return measure.model_copy(
        update={
            "value": float(figure.value),
            "low": None if figure.low is None else float(figure.low),
            "high": None if figure.high is None else float(figure.high),
            "unit": figure.unit,
            "display": figure.display,
            "limit": figure.limit,
            "tolerance": None if figure.tolerance is None else float(figure.tolerance),
            "hedged": figure.hedged,
        }
    )
