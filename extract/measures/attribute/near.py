"""What the rules for attributes share: words of measure behind and before a figure, and whether they suit it."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable

from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import ANY_KIND, knowledge
from extract.measures.lexicon import Found
from extract.units import to_unit

Rule = Callable[[Figure, Finding], str | None]
"""A rule answers with an attribute's name or passes."""

_SAME_ORDER = 3
"""Lengths further apart than this ratio are taken for different measures."""
_WORKED_AWAY = 25
"""Play and gaps are there to be worked away, so a second reading may be far smaller."""
_PLACED = frozenset({("of", "its"), ("of", "their"), ("of", "it's")})
"""Behind these a noun of measure only tells where: "at the top of its travel"."""
_SLIGHT = frozenset({"width", "thickness", "gap", "gauge"})
_LONG_INCHES = 10
_VAST_INCHES = 48
_THIN_INCHES = 0.15
_FOIL_INCHES = 0.03
"""Nothing is so narrow: ten thou of a strip is its thickness."""


def suits(figure: Figure, found: Found) -> bool:
    """True where the figure's unit may stand for the kind of the attribute that a word names."""
    attribute = found.entry.attribute
    if figure.kind == "time" and attribute is not None and attribute.kind == ANY_KIND:
        return False
    return attribute is not None and (figure.kind is None or knowledge().akin(figure.kind, attribute.kind))


def behind(figure: Figure, founds: list[Found], reach: int) -> list[Found]:
    """Words of measure behind the figure with nothing but fillers between, the longest first."""
    scene = figure.scene
    for at in range(figure.end, min(figure.right[1], figure.end + reach)):
        here = _between(founds, at, at + 1)
        if here:
            return sorted(here, key=lambda found: found.start - found.end)
        if scene.words[at] not in knowledge().fillers and scene.tags[at] not in ("JJ", "JJR", "NN"):
            return []
    return []


def before(figure: Figure, founds: list[Found], start: int) -> list[Found]:
    """Words of measure in tokens `start` to the figure, the nearest first, "beat error" before "error"."""
    words = figure.scene.words
    found = [
        one
        for one in _between(founds, start, figure.start)
        if one.end <= figure.start and words[max(0, one.start - 2) : one.start] not in _PLACED
    ]
    return sorted(found, key=lambda one: (-one.end, one.start))


def adjoins(figure: Figure, start: int) -> bool:
    """True where only adjectives stand between the figure and a thing: "11 inch frosted head"."""
    scene = figure.scene
    return scene.runs_on(figure.end - 1, start) and all(
        scene.tags[at] in ("JJ", "HYPH", "NN", "VBN") and scene.words[at] not in knowledge().clause.no_adjectives
        for at in range(figure.end, start)
    )


def same_order(figure: Figure, earlier: Finding) -> bool:
    """Two lengths for one thing lie near each other; twenty inches and an eighth are two measures."""
    unit, other = figure.quantity.unit, earlier.figure.quantity.unit
    if unit is None or other is None or unit.kind != "length" or other.kind != "length":
        return True
    one = to_unit(abs(figure.quantity.value), unit, other)
    two = abs(earlier.figure.quantity.value)
    furthest = _WORKED_AWAY if earlier.attribute in knowledge().worked_away and one <= two else _SAME_ORDER
    return min(one, two) * furthest >= max(one, two)


def usual_measure(name: str, figure: Figure) -> str | None:
    """What a bare length of a thing usually is, by its name or head noun; None where no list has it.

    A foot of a strip is its length, whatever a strip's bare figure usually is; a hundredth of a wire is its diameter.
    """
    nouns = (name, name.rsplit(maxsplit=1)[-1])
    tables = (figure.scene.lexicon.usual, knowledge().usual)
    attribute = next((table[noun] for table in tables for noun in nouns if noun in table), None)
    inches = length_in_inches(figure)
    if nouns[1] in knowledge().fixings and inches >= knowledge().fixing_inches:
        return "length"
    if attribute and inches >= _VAST_INCHES:
        return "length"
    if attribute in _SLIGHT and inches >= _LONG_INCHES:
        return "length"
    if attribute == "width" and 0 < inches < _FOIL_INCHES:
        return "thickness"
    thin = attribute == "length" and 0 < inches < _THIN_INCHES and nouns[1] in knowledge().strands
    return "diameter" if thin else attribute


def length_in_inches(figure: Figure) -> float:
    """The figure in inches, 0 where it is no length."""
    unit = figure.quantity.unit
    if unit is None or unit.kind != "length":
        return 0.0
    return float(to_unit(abs(figure.quantity.value), unit, "inch"))


def _between(founds: list[Found], start: int, end: int) -> list[Found]:
    low = bisect_left(founds, start, key=lambda found: found.start)
    high = bisect_left(founds, end, key=lambda found: found.start)
    return founds[low:high]
