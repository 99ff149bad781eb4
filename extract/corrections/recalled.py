"""A figure of this session recalled by its speaker, and the one that it came to be.

Takes "I told you 12 mm behind the foot. On this top it went to 15" and "I had those screws down as 8 mm. They're 10",
where the first had been said; refuses "I told you 3 mm for the rim. The bridge is 2 mm" and "like I said, 5 mm".
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.corrections.figure_pairs import counts_things
from extract.corrections.openings import opens
from extract.corrections.plain import plain_words
from extract.corrections.said_before import first_said
from extract.corrections.scene import Draft, Scene, alike, differ, kind_of
from extract.corrections.signs import signs_of
from extract.corrections.subjects import of_another
from extract.corrections.turns import units_of
from extract.spans import Measured
from extract.units import UnitError, to_unit

_CLAIM, _ANSWER = 12, 28
_SENTENCES = 3
_HELD = 4
_WIDE = 4
"""How many times another a figure for the same thing may be."""


def find_recalled(scene: Scene) -> Iterator[Draft]:
    """Each figure quoted by its speaker and said before, with another of its kind behind it."""
    signs = signs_of(scene)
    for begin, end in signs.all("quote"):
        wrong = next((at for at in range(end, min(end + _CLAIM, len(scene.pieces))) if scene.pieces[at].measured), None)
        if wrong is None or signs.within("others", max(0, begin - 1), begin + 2) or _upheld(scene, begin, wrong):
            continue
        earlier = first_said(scene, wrong, begin)
        right = answered(scene, wrong, begin) if earlier else None
        if right is None:
            continue
        first, second = scene.measured(wrong), scene.pieces[right].measured
        gone = tuple(dict.fromkeys((*(scene.measured(at) for at in earlier), first)))
        spans = (earlier[0], earlier[0] + 1), (right, right + 1)
        if second is not None:
            yield Draft(begin, right + 1, "this_session", *spans, gone, second)
        elif (number := scene.pieces[right].number) is not None:
            yield Draft(begin, right + 1, "this_session", *spans, gone, unit=first.quantity.unit, value=number.value)


def answered(scene: Scene, wrong: int, begin: int) -> int | None:
    """The first other figure of the kind behind the quoted one that is said to be so, of no other thing."""
    pieces, words = scene.pieces, plain_words()
    first = scene.measured(wrong)
    units = units_of(scene)
    last = min(wrong + 1 + _ANSWER, len(pieces))
    sentences = [at for at in units if wrong < at < last]
    if len(sentences) > _SENTENCES:
        last = sentences[_SENTENCES]
    for at in range(wrong + 1, last):
        piece = pieces[at]
        if piece.number is None or not (piece.measured or not counts_things(scene, at)):
            continue
        second = piece.measured
        if scene.text(at, at + 1).lower() == "one":
            continue
        if second is not None and (not alike(first, second) or kind_of(second) not in (None, kind_of(first))):
            continue
        if piece.number.value == first.quantity.number.value:
            continue
        if second is not None and (not differ(first, second) or second.quantity.difference):
            continue
        if not _of_its_size(first, piece.number.value, second):
            continue
        led = pieces[at - 1].text in words.leads or opens(scene, at)
        return at if led and not of_another(scene, begin, wrong, at) else None
    return None


def _of_its_size(first: Measured, value: Fraction, second: Measured | None) -> bool:
    """Neither is more than a few times the other: "six inches" is no "seventeen foot"."""
    unit, other = first.quantity.unit, second.quantity.unit if second else None
    if unit is not None and other is not None and unit != other:
        try:
            value = to_unit(value, other.name, unit.name)
        except UnitError:
            return False
    small, large = sorted((abs(first.quantity.number.value), abs(value)))
    return large <= _WIDE * small


def _upheld(scene: Scene, begin: int, wrong: int) -> bool:
    """What was said holds: "I told you 30 thou, and look, 30 thou all round"."""
    pieces = scene.pieces
    before = pieces[begin - 1] if begin else None
    if before is not None and before.text in scene.words.not_behind and not before.mark:
        return True
    return next(iter(plain_words().held.find(pieces, wrong + 1, wrong + _HELD)), None) is not None
