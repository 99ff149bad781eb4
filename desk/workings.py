"""A working as a person reads it in a terminal."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.convert import nearest_fraction
from extract.units import to_unit
from extract.working import Answer, Worked

_NEAR_ENOUGH = Fraction(1, 100)
"""How far off, as a part of it, the nearest 64th may be and still be worth showing."""
_SYMBOLS = {"inch": "in", "foot": "ft", "newton": "N", "gram": "g", "percent": "%", "hertz": "Hz", "cent": "cents"}
_PLACES = {"percent": 1, "cent": 2, "hertz": 3}
_FINE_MM = 1.0


def lines(worked: Worked) -> Iterator[str]:
    """The title, an aligned line an answer, then the working, the source and what to know."""
    yield worked.title
    width = max(len(answer.name) for answer in worked.answers)
    for answer in worked.answers:
        yield f"  {answer.name:<{width}}  {shown(answer)}"
    yield f"  working: {worked.working}"
    yield f"  source:  {worked.source}"
    for note in worked.notes:
        yield f"  note:    {note}"


def shown(answer: Answer) -> str:
    """An answer with its unit; a length in inches also as the nearest 64th, with its error, and in millimetres."""
    if answer.unit == "inch":
        return _length(answer)
    if answer.unit == "newton":
        pounds = to_unit(Fraction(answer.value), "newton", "pound_force")
        return f"{answer.value:.1f} N ({float(pounds):.1f} lbf)"
    figure = f"{answer.value:.{_PLACES[answer.unit]}f}" if answer.unit in _PLACES else f"{answer.value:.4g}"
    return f"{figure} {_SYMBOLS.get(answer.unit, answer.unit)}".rstrip()


def _length(answer: Answer) -> str:
    value = Fraction(answer.value).limit_denominator(10**9)
    millimetres = float(value * Fraction(254, 10))
    metric = f"{millimetres:.3f} mm" if abs(millimetres) < _FINE_MM else f"{millimetres:.2f} mm"
    text = f"{answer.value:.4f} in = {metric}"
    part = nearest_fraction(value, Fraction(0))
    if part is None:
        return text
    whole, _, rest = part.lstrip("-").rpartition(" ")
    near = Fraction(rest) + (int(whole) if whole else 0)
    off = abs(value) - near
    if abs(off) < Fraction(1, 100_000):
        return f"{text} = {part} in"
    if abs(off) > near * _NEAR_ENOUGH:
        return text
    return f"{text} ≈ {part} in ({'+' if off > 0 else '−'}{float(abs(off)):.4f})"
