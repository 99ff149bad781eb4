"""A figure pointed back to and put right.

Takes "the 30 thou I gave you for the gap? Make that 25" and "that 19 mm from before was wrong, it's 16"; refuses "the
30 thou I gave you is for a cold engine" and "it was 5 before, now it's 6".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.said_before import first_said
from extract.corrections.scene import Draft, Scene, alike, differ

_POINT = 4
_ANSWER = 20
_SAYING = frozenset({"i", "is", "was", "like", "as"})
_POINTERS = frozenset({"the", "that", "those", "this", "my"})


def find_pointed_back(scene: Scene) -> Iterator[Draft]:
    """Each figure said before, pointed at, with another that holds instead."""
    pieces = scene.pieces
    for wrong in scene.figures:
        pointing = next(iter(scene.words.pointing.find(pieces, wrong + 1, wrong + _POINT)), None)
        pointed = bool(wrong) and pieces[wrong - 1].text in _POINTERS
        if pointing is None or not (pointed or pieces[pointing[0]].text in _SAYING):
            continue
        first = scene.measured(wrong)
        earlier = first_said(scene, wrong, wrong)
        if not earlier:
            continue
        right = next((at for at in range(pointing[1], min(wrong + _ANSWER, len(pieces))) if pieces[at].measured), None)
        if right is None or not any(piece.text in scene.words.firm for piece in pieces[pointing[1] : right]):
            continue
        second = scene.measured(right)
        if alike(first, second) and differ(first, second):
            gone = (*(scene.measured(at) for at in earlier), first)
            where = (earlier[0], earlier[0] + 1)
            yield Draft(pointing[1], right + 1, "this_session", where, (right, right + 1), gone, second)
