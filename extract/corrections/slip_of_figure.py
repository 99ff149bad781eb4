"""A figure put right in the same breath.

Takes "three, no, four sixteenths", "that's 1 3/8, sorry, 1 1/8 inches" and "losing three / i mean four minutes a day";
refuses "5 mm, no more than 6" and "Tock, no. Tick, yes."
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.scene import Draft, Scene, alike, differ, kind_of
from extract.roots import stem
from extract.spans import Measured

_LEFT = 4
"""Words that may stand between the wrong figure and the phrase: "three minutes a day"."""
_FAR_LEFT = 11
"""The same where the right figure follows the phrase at once: "3/4 from the shoulder to the end, no, 7/8"."""
_AT_ONCE = 2
_NOUNS = frozenset({"NN", "NNS"})
_RIGHT = 7
"""Words that may stand between the phrase and the right figure."""
_RETURN = 6
"""Words before the wrong figure that may be said again: "set it to 5, no, set it to 6"."""


def find_figure_slips(scene: Scene) -> Iterator[Draft]:
    """Each pair of figures with such a phrase between."""
    pieces = scene.pieces
    for at, piece in enumerate(pieces):
        if not piece.figure:
            continue
        for place in range(at + 1, min(at + 1 + _FAR_LEFT, len(pieces))):
            if pieces[place].figure:
                break
            end, strong = scene.run_at(place)
            if end > place and (place - at <= _LEFT or strong):
                found = _pair(scene, at, place, end, strong)
                if found is not None:
                    yield found
                break


def _pair(scene: Scene, wrong: int, begin: int, end: int, strong: bool) -> Draft | None:
    right = _right_figure(scene, wrong, end)
    if right is None or (not strong and begin - wrong > 2):
        return None
    if begin - wrong > _LEFT and (right - end > _AT_ONCE or not _one_kind(scene, wrong, right)):
        return None
    first, second = scene.pieces[wrong], scene.pieces[right]
    if first.mark == "?" and scene.pieces[end - 1].ends:
        return None
    if second.measured is None:
        return _count(scene, wrong, begin, right) if strong and first.measured is None else None
    if first.measured is None:
        return _draft(begin, wrong, right, (), second.measured) if begin == wrong + 1 else None
    if alike(first.measured, second.measured) and differ(first.measured, second.measured):
        return _draft(begin, wrong, right, (first.measured,), second.measured)
    return None


def _draft(begin: int, wrong: int, right: int, gone: tuple[Measured, ...], kept: Measured) -> Draft:
    return Draft(begin, right + 1, "this_session", (wrong, wrong + 1), (right, right + 1), gone, kept)


def _count(scene: Scene, wrong: int, begin: int, right: int) -> Draft | None:
    """ "There's 24, no, 26 hooks", "seven spindles, no, nine": bare numbers of the same things."""
    pieces = scene.pieces
    first, second = pieces[wrong].number, pieces[right].number
    if first is None or second is None or first.value == second.value:
        return None
    until = counted(scene, right)
    named = [stem(piece.text) for piece in pieces[wrong + 1 : begin]]
    if named and until > right + 1 and stem(pieces[right + 1].text) not in named:
        return None
    return Draft(begin, until, "this_session", (wrong, begin), (right, until)) if len(named) <= _AT_ONCE else None


def _one_kind(scene: Scene, wrong: int, right: int) -> bool:
    first, second = scene.pieces[wrong].measured, scene.pieces[right].measured
    return first is not None and second is not None and kind_of(first) == kind_of(second) is not None


def _right_figure(scene: Scene, wrong: int, end: int) -> int | None:
    """The first figure behind the phrase, where only small words or words said again stand between."""
    pieces = scene.pieces
    again = {piece.text for piece in pieces[max(0, wrong - _RETURN) : wrong]}
    for place in range(end, min(end + _RIGHT, len(pieces))):
        if pieces[place].figure and not _is_digit(scene, place):
            return place
        if (
            pieces[place].text not in scene.words.fillers
            and not pieces[place].figure
            and pieces[place].text not in again
        ):
            return None
    return None


def _is_digit(scene: Scene, place: int) -> bool:
    """A digit named before the figure it is in: "no, that's a three, 375"."""
    pieces = scene.pieces
    one = pieces[place].measured
    bare = one is None or not one.quantity.unit_said
    return bare and pieces[place - 1].text in ("a", "an") and place + 1 < len(pieces) and pieces[place + 1].figure


def counted(scene: Scene, place: int) -> int:
    """Behind what a bare number counts: "26 hooks"."""
    piece = scene.pieces[place]
    follows = place + 1 < len(scene.pieces) and not piece.mark and scene.pieces[place + 1].tag in ("NN", "NNS")
    return place + 2 if follows else place + 1
