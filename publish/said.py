"""A figure as it was said, with its limit or tolerance."""

from __future__ import annotations

from extract.record import Measure
from publish.wording import LIMITS


def said_figure(measure: Measure) -> str:
    """The figure with its unit as the speaker put it: `5/64 in`, `at most 2 thou`; never empty."""
    figure = measure.display or _bare(measure)
    if measure.limit is not None and not figure.startswith(tuple(LIMITS.values())):
        figure = f"{LIMITS[measure.limit]} {figure}"
    if measure.tolerance is not None and "±" not in figure:
        figure = f"{figure} ± {measure.tolerance:g}"
    return figure


def _bare(measure: Measure) -> str:
    ends = [measure.value] if measure.low is None or measure.high is None else [measure.low, measure.high]
    figure = " to ".join(f"{end:g}" for end in ends)
    return figure if measure.unit is None else f"{figure}\N{NO-BREAK SPACE}{measure.unit}"
