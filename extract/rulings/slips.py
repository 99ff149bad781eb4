"""A step in whose words a figure was said wrong and put right on the same film: it reads what holds.

"Leave it in the clamps for twelve hours", taken back three sentences later, reads "for twenty-four hours": a procedure
is worked from, and nobody looks up the errata with glue on their hands. The figure that was said stays in the record,
beside the one that holds.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from extract.record import Correction, Measure, Step
from extract.rulings.shown import put_figure, shows


def put_right_in(step: Step, measures: Mapping[str, Measure], corrections: Iterable[Correction]) -> Step:
    """The step with the figures that hold, in its words and among its own, behind those that were taken back."""
    held = {one.id: one for one in corrections}
    text, names = step.text, list(step.measures)
    for name in step.measures:
        measure = measures.get(name)
        correction = held.get(measure.corrected_by or "") if measure is not None and not measure.stands else None
        if measure is None or correction is None:
            continue
        instead = measures.get(correction.replacement_measure or "")
        shown = _shown(text, measure)
        if shown is not None:
            text = put_figure(text, shown, instead.quote if instead is not None else correction.replacement)
        if instead is not None and instead.id not in names:
            names.insert(names.index(name) + 1, instead.id)
    return (
        step
        if names == list(step.measures) and text == step.text
        else step.model_copy(update={"text": text, "measures": tuple(names)})
    )


def _shown(text: str, measure: Measure) -> str | None:
    """How the text shows a figure. A lone "three" may be another three: only a figure with its unit tells."""
    told = (one for one in (measure.display, measure.quote) if len(one.split()) > 1)
    return next((one for one in told if shows(text, one)), None)
