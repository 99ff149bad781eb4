"""A length that is no size of the thing: how much comes off it, or how far it stands from another.

Takes "take away 1/32", "1/32 comes off the saddle", "it stands 4 thou high", "the string clears the third fret by 18
thou" and "4 thou over the first fret"; refuses "take it down to 3/32", "12 by 18 inches" and "the saddle is 3/8 high".
Source: common usage of spoken English; no source.
"""

from __future__ import annotations

from fractions import Fraction

from extract.checks.linear import conversion
from extract.checks.talk import Said
from extract.checks.vocabulary import check_words

SIZES = frozenset({"height", "thickness", "width", "depth", "length", "diameter", "fret height", "fret width"})
"""Attributes that a thing has by itself, whatever stands beside it."""
_REACH, _CLEAR = 5, 10
_SMALL = Fraction(3, 2)
"""Millimetres below which "high", "low" or "out" behind a figure make it a difference."""
_WIDEST = Fraction(10)
"""Millimetres up to which "over" and "above" tell of a clearance."""


def is_no_size(one: Said) -> bool:
    """The words about a length say that it is taken off, or lies between two things."""
    return one.measure.kind == "length" and (_comes_off(one) or _is_by(one) or _clears(one) or is_off(one))


def _comes_off(one: Said) -> bool:
    words = check_words().offsets
    if one.after[:1] and one.after[0] in words["off_behind"]:
        return True
    if " ".join(one.after[:2]) in words["off_pairs"] or " ".join(one.after[:3]) in words["off_pairs"]:
        return True
    near = one.clause[-_REACH:]
    at = max((place for place, word in enumerate(near) if word in words["taking"]), default=-1)
    return at >= 0 and not words["reaching"] & {*near[at:]}


def _is_by(one: Said) -> bool:
    """ "Clears it by 18 thou"; in "12 by 18" the figure before stands right before the "by"."""
    words = [word for word in one.clause if word not in check_words().offsets["about"]]
    return len(words) > 1 and words[-1] == "by"


def _clears(one: Said) -> bool:
    """ "4 thou over the fret"; a foot above the floor may be a height."""
    words, near = check_words().offsets, one.clause[-_CLEAR:]
    over = one.after[:1] and one.after[0] in words["over"] and _is_under(one, _WIDEST)
    return bool(words["clearing"] & {*near}) or bool(over)


def is_off(one: Said) -> bool:
    """ "4 thou high", "half a millimetre proud": how far it stands off, not how big it is."""
    return bool(one.after[:1]) and one.after[0] in check_words().offsets["standing"] and _is_under(one, _SMALL)


def _is_under(one: Said, most: Fraction) -> bool:
    convert = conversion(one.measure.unit or "", "millimeter")
    return convert is not None and convert(one.figure.value) < most
