"""Pitch: hertz of a note in equal temperament, and the cents between two frequencies.

A4 is 440 Hz; "E2" is the low string of a guitar. Refuses a note without its octave.
"""

from __future__ import annotations

import re
from math import log2

from extract.working.worked import WorkingError

SOURCE = "equal temperament on A4 = 440 Hz, ISO 16:1975"
CENTS_SOURCE = "definition: 1200 cents to the octave"
STANDARD_A = 440.0
_A4 = 69
_STEPS = {"c": 0, "d": 2, "e": 4, "f": 5, "g": 7, "a": 9, "b": 11}
_MARKS = {"": 0, "#": 1, "♯": 1, "b": -1, "♭": -1}
_NOTE = re.compile(r"([a-gA-G])([#♯b♭]?)(-?\d)")


def hertz(note: str, a4: float = STANDARD_A) -> float:
    """Frequency of a note such as "A4", "F#3" or "Bb2" in scientific pitch notation, in Hz: a4 × 2^((n − 69)/12).

    Raises `WorkingError` where the text is no note.
    """
    found = _NOTE.fullmatch(note.strip())
    if found is None:
        raise WorkingError(f"“{note}” is no note", "write it as A4, F#3 or Bb2, with its octave")
    number = 12 * (int(found[3]) + 1) + _STEPS[found[1].lower()] + _MARKS[found[2]]
    return a4 * float(2.0 ** ((number - _A4) / 12))


def cents(frequency: float, against: float) -> float:
    """How far `frequency` lies above `against` (both in Hz), in cents: 1200 log₂(f/f₀); below nought where it is flat.

    Raises `WorkingError` where either isn't above nought.
    """
    if frequency <= 0 or against <= 0:
        raise WorkingError("a frequency must be above nought", "give both in hertz")
    return 1200 * log2(frequency / against)
