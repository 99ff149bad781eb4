"""A sentence refused by its own speaker and said again another way.

Takes "The flat face looks to the fingerboard. No. Listen to me. To the tailpiece, the flat face"; refuses "Tock, no.
Tick, yes." and a "no" that answers nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.scene import Draft, Scene

_BACK = 20
_AHEAD = 24
_SHARED = 2
_REFUSING = frozenset({"no", "nope", "wrong", "nonsense", "rubbish"})


def find_refused(scene: Scene) -> Iterator[Draft]:
    """Each refusal that stands alone between two sentences about the same thing."""
    pieces = scene.pieces
    for at in range(1, len(pieces) - 1):
        if pieces[at].text not in _REFUSING or not pieces[at].ends or not pieces[at - 1].ends:
            continue
        start = _sentence_start(scene, at - 1)
        end = scene.sentence_end(at + 1, _AHEAD)
        while end < len(pieces) and end - at < _AHEAD // 2:
            end = scene.sentence_end(end, _AHEAD - (end - at))
        before, after = range(start, at), range(at + 1, end)
        if any(pieces[k].measured for k in after):
            continue
        shared = scene.content(before) & scene.content(after)
        if len(shared) >= _SHARED and scene.content(after) - shared:
            yield Draft(at, end, "this_session", (start, at), (at + 1, end))


def _sentence_start(scene: Scene, place: int) -> int:
    for at in range(place - 1, max(-1, place - _BACK), -1):
        if scene.pieces[at].ends:
            return at + 1
    return max(0, place - _BACK)
