"""Frets in equal temperament: how far each lies from the nut.

The twelfth is half the scale, always. Refuses a fret before the nut.
"""

from __future__ import annotations

from extract.working.worked import WorkingError

SOURCE = "equal temperament: nut to fret n is scale × (1 − 2^(−n/12)), the exact form of the 17.817 rule"


def from_nut(scale: float, fret: int) -> float:
    """Distance from nut to `fret` on a string of length `scale`, in its unit; without compensation.

    Raises `WorkingError` for a scale or a fret below nought.
    """
    if scale <= 0 or fret < 0:
        raise WorkingError("scale length must be above nought, frets count from 0 at the nut", "check both figures")
    return scale * (1 - float(2.0 ** (-fret / 12)))
