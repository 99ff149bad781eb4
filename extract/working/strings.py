"""Strings: the pull of a string at its pitch.

A plain steel 0.012 in E4 over 25.5 in pulls 104 N (23.5 lbf). Wound strings need their weight a length, which
can't be worked out from the diameter alone.
"""

from __future__ import annotations

from math import pi

from extract.working.worked import WorkingError

SOURCE = "T = μ (2 L f)², from the wave on a string: OpenStax University Physics volume 1, section 16.3"
STEEL_DENSITY = 7850.0
"""Density of plain steel wire in kg/m³: common practice, no source; wire on sale differs by about a percent."""


def mass_per_length(diameter: float, density: float = STEEL_DENSITY) -> float:
    """Mass a length of a plain string in kg/m, from its diameter in m and its density in kg/m³."""
    if diameter <= 0 or density <= 0:
        raise WorkingError("diameter and density must be above nought", "check both figures")
    return density * pi * diameter**2 / 4


def tension(length: float, frequency: float, mass: float) -> float:
    """Tension in N of a string of speaking length `length` m at `frequency` Hz that weighs `mass` kg/m.

    Raises `WorkingError` where one of them isn't above nought.
    """
    if length <= 0 or frequency <= 0 or mass <= 0:
        raise WorkingError("length, pitch and weight of a string must be above nought", "check the figures")
    return mass * (2 * length * frequency) ** 2
