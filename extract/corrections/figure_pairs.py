"""Two figures of a narration side by side: how alike they are, and what parts them."""

from __future__ import annotations

from fractions import Fraction

from extract.corrections.evidence import Reasons
from extract.corrections.pieces import Piece
from extract.corrections.scene import Scene, alike, differ, says_again
from extract.roots import stem

DENYING = frozenset({"not", "isn't", "wasn't", "aren't", "weren't", "never"})
JOINS = frozenset(
    {
        "and",
        "to",
        "or",
        "by",
        "with",
        "then",
        "plus",
        "but",
        "than",
        "x",
        "times",
        "over",
        "into",
        "out",
        "minus",
        "less",
        "away",
        "in",
    }
)
"""Words that set one figure beside another, where both hold."""


def comparable(scene: Scene, wrong: int, right: int) -> bool:
    """Two figures of one kind, or bare ones, that differ."""
    first, second = scene.pieces[wrong], scene.pieces[right]
    if first.measured and second.measured:
        one, other = first.measured, second.measured
        return alike(one, other) and differ(one, other) and not says_again(one, other)
    if first.number is None or second.number is None or first.number.value == second.number.value:
        return False
    if not first.measured and second.measured:
        return second.measured.quantity.unit is not None
    return True


def breaks(scene: Scene, begin: int, end: int) -> int:
    """How many sentences end between two places; without marks, how many breaths."""
    return sum(begins_anew(scene, at) for at in range(begin + 1, end + 1))


def begins_anew(scene: Scene, at: int) -> bool:
    """A sentence begins at a place; without marks, a breath."""
    if at <= 0 or at >= len(scene.pieces):
        return False
    before = scene.pieces[at - 1]
    return before.ends or (not scene.marked and before.cue != scene.pieces[at].cue)


def forms(wrong: Piece, right: Piece) -> Reasons:
    """How the two figures look beside each other."""
    first, second = wrong.number, right.number
    if first is None or second is None:
        return {}
    ratio = abs(second.value / first.value) if first.value else Fraction(0)
    same_unit = bool(wrong.measured and right.measured and wrong.measured.quantity.unit == right.measured.quantity.unit)
    return {
        "close": float(Fraction(1, 2) <= ratio <= 2),
        "wide": float(ratio > 4 or ratio < Fraction(1, 4)),
        "same_form": float(first.form == second.form and first.decimals == second.decimals),
        "same_denominator": float(first.denominator is not None and first.denominator == second.denominator),
        "same_unit": float(same_unit),
        "unit_supplied": float(is_bare(wrong) and not is_bare(right)),
        "unit_dropped": float(not is_bare(wrong) and is_bare(right)),
        "both_bare": float(wrong.measured is None and right.measured is None),
        "range": float((first.low is None) != (second.low is None)),
    }


def is_bare(piece: Piece) -> bool:
    """No unit was said with it."""
    return piece.measured is None or not piece.measured.quantity.unit_said


def same_value(one: Piece, other: Piece) -> bool:
    """Two figures of the same number."""
    return one.number is not None and other.number is not None and one.number.value == other.number.value


def counts_things(scene: Scene, at: int) -> bool:
    """A noun stands behind a bare number: "two films"."""
    pieces = scene.pieces
    return at + 1 < len(pieces) and not pieces[at].mark and pieces[at + 1].tag in ("NN", "NNS", "JJ")


def of_other_things(scene: Scene, wrong: int, right: int) -> bool:
    """The two figures are of different attributes of different items, or count different things."""
    first, second = scene.pieces[wrong].measured, scene.pieces[right].measured
    if first is None or second is None:
        counted = [stem(scene.pieces[at + 1].text) for at in (wrong, right) if counts_things(scene, at)]
        return len(counted) == 2 and counted[0] != counted[1]
    return (
        None not in (first.attribute, second.attribute, first.item, second.item)
        and first.attribute != second.attribute
        and first.item != second.item
    )
