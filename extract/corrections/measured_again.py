"""A thing measured once more, with another figure.

Takes "the shell's 73 mm wide" and, later, "measured again with proper calipers, that shell is 68"; refuses "measured
the axle again, it's 118 mm" and the same words behind work on the thing.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from extract.corrections.far_pairs import window
from extract.corrections.figure_pairs import counts_things
from extract.corrections.plain import plain_words
from extract.corrections.scene import Draft, Scene, differ, kind_of, same_kind
from extract.corrections.signs import signs_of
from extract.corrections.turns import unit_at
from extract.roots import root

_AHEAD, _BACK = 18, 400
_NEAR = 30
"""Words back among which the last figure of the kind may be meant where nothing is named."""
_THING = 6
_WORK = frozenset({"now", "after", "still", "also", "another", "other"})
_NOUNS = frozenset({"NN", "NNS", "NNP"})
_WORKED = frozenset({"VBN", "VBD"})
_DOING = frozenset({"i've", "we've", "i'd"})


def find_measured_again(scene: Scene) -> Iterator[Draft]:
    """Each second measuring with the figure that it gives, and the one of the same thing that was given before."""
    pieces = scene.pieces
    for begin, end in plain_words().again.find(scene.line, 1, len(pieces)):
        right = _right(scene, begin, end)
        wrong = _wrong(scene, begin, right) if right is not None else None
        if right is None or wrong is None or _worked_on(scene, wrong, begin, right):
            continue
        first, second, number = scene.measured(wrong), pieces[right].measured, pieces[right].number
        spans = (wrong, wrong + 1), (right, right + 1)
        if second is not None:
            yield Draft(begin, right + 1, "this_session", *spans, (first,), second)
        elif number is not None:
            yield Draft(
                begin, right + 1, "this_session", *spans, (first,), unit=first.quantity.unit, value=number.value
            )


def _right(scene: Scene, begin: int, end: int) -> int | None:
    """The figure that the second measuring gives: the first one behind it, in this sentence or the next."""
    pieces = scene.pieces
    last = unit_at(scene, end)[1] if end < len(pieces) else end
    last = unit_at(scene, last)[1] if last < len(pieces) else last
    for at in range(begin, min(last, end + _AHEAD, len(pieces))):
        if pieces[at].number is not None and scene.text(at, at + 1).lower() not in ("one", "zero"):
            return at if pieces[at].measured or not counts_things(scene, at) else None
    return None


def _thing(scene: Scene, begin: int, right: int) -> frozenset[str]:
    """Nouns that name what is measured: those between the remark and the figure, and right behind it."""
    pieces = scene.pieces
    start = max(begin, unit_at(scene, right)[0])
    behind = right + 1 + (right + 1 < len(pieces) and pieces[right + 1].tag == "JJ")
    near = [*range(start, right), *range(right + 1, min(behind + 1, len(pieces)))]
    named = {root(pieces[at].text) for at in near if pieces[at].tag in _NOUNS | {"POS", "NNS"}}
    return frozenset(named) - plain_words().gauges - scene.words.empty


def _wrong(scene: Scene, begin: int, right: int) -> int | None:
    """The latest figure of the thing, of the same kind; where none is named, the last of its kind close before."""
    second = scene.pieces[right].measured
    kind = kind_of(second) if second else None
    thing = _thing(scene, begin, right)
    for at in reversed([place for place in scene.figures if begin - _BACK <= place < begin]):
        one = scene.measured(at)
        if one.quantity.unit is None or (kind is not None and kind_of(one) != kind):
            continue
        near = range(max(unit_at(scene, at)[0], at - _THING), min(at + _THING // 2, len(scene.pieces)))
        if thing & {root(scene.pieces[k].text) for k in near} or (not thing and begin - at <= _NEAR):
            return at if _another(scene, at, right) else None
    return None


def _another(scene: Scene, wrong: int, right: int) -> bool:
    first, second, number = scene.measured(wrong), scene.pieces[right].measured, scene.pieces[right].number
    if number is None or number.value == first.quantity.number.value:
        return False
    return second is None or (same_kind(first, second) and differ(first, second))


def _worked_on(scene: Scene, wrong: int, begin: int, right: int) -> bool:
    """Something was done to it in between, or the two figures are of two times: "pressed it, measured again"."""
    pieces = scene.pieces
    if signs_of(scene).within("work", max(wrong + 1, window(scene, right)[0]), right + 2):
        return True
    near = pieces[max(wrong + 1, begin - 8) : right + 2]
    acted = any(
        one.text in _DOING and other.tag in _WORKED and other.text not in plain_words().measuring
        for one, other in pairwise(near)
    )
    return acted or any(piece.text in _WORK for piece in near)
