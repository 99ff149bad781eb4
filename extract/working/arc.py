"""Arcs: the radius of a curve from a chord and its height, and the height from radius and chord.

A dish of 25 ft rises 3/32 in over 15 in. Refuses a chord that is longer than the arc is wide.
"""

from __future__ import annotations

from math import sqrt

from extract.working.worked import WorkingError

SOURCE = "geometry of the circle: CRC Standard Mathematical Tables (1959) page 398, as cited for an instrument back"


def radius(chord: float, height: float) -> float:
    """Radius of the arc over `chord` that rises `height` in the middle, all in one unit: height/2 + chord²/(8 height).

    Raises `WorkingError` where either isn't above nought, or the arc would be more than half a circle.
    """
    if chord <= 0 or height <= 0:
        raise WorkingError("chord and height must be above nought", "measure both along and across the straightedge")
    if height > chord / 2:
        raise WorkingError("the height is more than half the chord", "check which figure is which")
    return height / 2 + chord**2 / (8 * height)


def sagitta(radius: float, chord: float) -> float:
    """Height of an arc of `radius` over `chord`, in their unit: radius − √(radius² − chord²/4).

    Raises `WorkingError` where the chord is longer than twice the radius.
    """
    if radius <= 0 or chord <= 0:
        raise WorkingError("radius and chord must be above nought", "give both as lengths")
    if chord > 2 * radius:
        raise WorkingError("no chord is longer than twice the radius", "check the units of both")
    # Of two nearly equal numbers little is left: the product form keeps its digits for a flat arc.
    half = chord / 2
    return half**2 / (radius + sqrt(radius**2 - half**2))
