"""An earlier figure denied.

Takes "it's 350, not 450" and "not 450, 350" where 450 was said before of the same; refuses the same words where it was
not, and "5, not less".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.said_before import first_said
from extract.corrections.scene import Draft, Scene, alike, differ

_APART = 3
_DENYING = frozenset({"not", "isn't", "wasn't", "aren't", "weren't", "ain't"})
_BACK = 9
_NEAR = 12
_OWNING = frozenset(
    {
        "said",
        "told",
        "misread",
        "wrong",
        "mistake",
        "sorry",
        "upside",
        "backwards",
        "muddled",
        "again",
        "glasses",
        "oops",
    }
)


def find_contrasts(scene: Scene) -> Iterator[Draft]:
    """Each denied figure that was said before, with the one that holds beside it."""
    pieces = scene.pieces
    for wrong in scene.figures:
        denied = next((at for at in range(wrong - 1, max(-1, wrong - _APART), -1) if pieces[at].text in _DENYING), None)
        if denied is None:
            continue
        right = _beside(scene, denied, wrong)
        if right is None:
            continue
        first, second = scene.measured(wrong), scene.measured(right)
        earlier = first_said(scene, wrong, min(denied, right))
        same = [at for at in earlier if scene.context(at) & scene.context(right)]
        if len(earlier) == 1 and _owned(scene, denied):
            same = list(earlier)
        if same and alike(first, second) and differ(first, second):
            begin, end = min(right, denied), max(right, wrong) + 1
            gone = (*(scene.measured(at) for at in same), first)
            yield Draft(begin, end, "this_session", (same[0], same[0] + 1), (right, right + 1), gone, second)


def _owned(scene: Scene, denied: int) -> bool:
    """The speaker says near it that the mistake is his own."""
    near = scene.pieces[max(0, denied - _NEAR) : denied + _NEAR]
    return any(piece.text in _OWNING for piece in near)


def _beside(scene: Scene, denied: int, wrong: int) -> int | None:
    """The figure just before "not", or the one behind the denied figure."""
    pieces = scene.pieces
    first = scene.measured(wrong)
    beside = [*range(denied - 1, max(-1, denied - _APART - 1), -1), *range(wrong + 1, min(wrong + _BACK, len(pieces)))]
    return next((at for at in beside if (one := pieces[at].measured) is not None and differ(first, one)), None)
