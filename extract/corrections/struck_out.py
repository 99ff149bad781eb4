"""A figure struck out by its number, with the one that holds beside it; and a count said anew.

Takes "it's 24 hours at 70 degrees, so scratch that six" where six hours were said, "not eleven, it's thirteen
hundredths", "22 frets. 21. I counted the nut" and "two drops, no, listen, four"; refuses "Two. Three. Four." and
"scratch a line at six".
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.corrections.figure_pairs import counts_things
from extract.corrections.openings import opens
from extract.corrections.scene import Draft, Scene, alike, differ
from extract.corrections.signs import signs_of
from extract.corrections.slip_of_figure import counted

_BEHIND, _BESIDE = 3, 16
_NOUN = 3
_TWICE = 2
_NOT = frozenset({"not", "isn't", "wasn't", "aren't"})
_SAYING_WHY = frozenset({"there's", "i", "i've", "counting", "with", "no", "not", "sorry", "if", "and"})
_THAT = frozenset({"that", "the", "those", "them", "my"})


def find_struck_out(scene: Scene) -> Iterator[Draft]:
    """Each figure struck out by its number, denied by its numerator, or counted anew."""
    yield from _discarded(scene)
    yield from _denied_numerator(scene)
    yield from _counted_anew(scene)


def _value(scene: Scene, at: int) -> Fraction | None:
    number = scene.pieces[at].number if at < len(scene.pieces) else None
    return number.value if number else None


def _discarded(scene: Scene) -> Iterator[Draft]:
    """ "Scratch that six": said before with a unit, and another of its kind stands beside the remark."""
    pieces = scene.pieces
    for begin, end in signs_of(scene).all("discard"):
        named = next((at for at in range(begin + 1, min(end + _BEHIND, len(pieces))) if pieces[at].figure), None)
        if named is None or pieces[named - 1].text not in _THAT or counts_things(scene, named):
            continue
        beside = [*range(begin - 1, max(-1, begin - _BESIDE), -1), *range(named + 1, min(named + _BESIDE, len(pieces)))]
        value = _value(scene, named)
        earlier = [at for at in scene.figures if at < begin and _value(scene, at) == value]
        for wrong in reversed(earlier):
            first = scene.measured(wrong)
            fits = (at for at in beside if (one := pieces[at].measured) and alike(first, one) and differ(first, one))
            right = next((at for at in fits if _value(scene, at) != value), None)
            if right is not None and right > wrong:
                span = min(right, begin), max(right, named) + 1
                yield Draft(
                    *span, "this_session", (wrong, wrong + 1), (right, right + 1), (first,), scene.measured(right)
                )
                break


def _denied_numerator(scene: Scene) -> Iterator[Draft]:
    """ "It's not eleven, it's thirteen hundredths": the fraction said before has the denominator of the one behind."""
    pieces = scene.pieces
    for at in range(1, len(pieces) - 2):
        if pieces[at].measured or pieces[at].number is None or pieces[at - 1].text not in _NOT:
            continue
        right = next((k for k in range(at + 1, min(at + 1 + _BEHIND, len(pieces))) if pieces[k].measured), None)
        number = pieces[right].number if right is not None else None
        if right is None or number is None or number.denominator is None:
            continue
        meant = (_value(scene, at) or 0) / number.denominator
        same = (k for k in reversed(scene.figures) if k < at and _value(scene, k) == meant)
        wrong = next((k for k in same if alike(scene.measured(k), scene.measured(right))), None)
        if wrong is not None and meant != number.value:
            first, second = scene.measured(wrong), scene.measured(right)
            yield Draft(at - 1, right + 1, "this_session", (wrong, wrong + 1), (right, right + 1), (first,), second)


def _counted_anew(scene: Scene) -> Iterator[Draft]:
    """ "22 frets. 21. I counted the nut", "three holes, well, four, there's another": a count, and a number alone."""
    pieces = scene.pieces
    for wrong in range(len(pieces) - 2):
        if pieces[wrong].measured or pieces[wrong].number is None or not counts_things(scene, wrong):
            continue
        for right in range(wrong + 2, min(wrong + 2 + _BESIDE // 2, len(pieces))):
            if pieces[right].figure:
                if pieces[right].measured is None and _said_anew(scene, wrong, right):
                    yield Draft(
                        wrong + 1, right + 1, "this_session", (wrong, counted(scene, wrong)), (right, right + 1)
                    )
                break


def _said_anew(scene: Scene, wrong: int, right: int) -> bool:
    """The number stands alone, a sentence or an edit phrase before it, of the size of the first."""
    pieces = scene.pieces
    first, second = _value(scene, wrong), _value(scene, right)
    after = right + 1
    if not first or not second or first == second or counts_things(scene, right):
        return False
    if not Fraction(1, _TWICE) <= second / first <= _TWICE:
        return False
    edited = right in scene.edit_begins or pieces[right - 1].text in ("well", "make", "that's")
    alone = bool(pieces[right].mark) if scene.marked else False
    told = after < len(pieces) and pieces[after].text in _SAYING_WHY
    listed = after < len(pieces) and (pieces[after].figure or (after + 1 < len(pieces) and pieces[after + 1].figure))
    if listed or scene.text(right, right + 1).lower() in ("one", "zero"):
        return False
    if edited and opens(scene, right if pieces[right - 1].mark else scene.edit_begins.get(right, right - 1)):
        return alone or told or opens(scene, after)
    if edited and not scene.marked:
        return told or opens(scene, after)
    return pieces[right - 1].ends and pieces[right].ends and right - wrong <= _NOUN + 1
