"""A figure given far back and named once more behind "not".

Takes "set the lift angle to 52 degrees ... Ah, wait. It's the old calibre, so 48, not 52"; refuses "it's 48, not 52"
without a sign that something is put right, and a figure that was not given before.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.openings import opens
from extract.corrections.scene import Draft, Scene, alike, kind_of
from extract.corrections.turns import asks, cry_end, unit_at

_CRY = 18
"""Words before "not" among which the speaker stops himself."""


def find_far_denied(scene: Scene) -> Iterator[Draft]:
    """Each "48, not 52" with the figure that was given first."""
    pieces = scene.pieces
    for at in range(2, len(pieces) - 1):
        if pieces[at].text != "not" or not (pieces[at - 1].figure and pieces[at + 1].figure and opens(scene, at + 2)):
            continue
        cry = _cry(scene, at - 1)
        wrong = _given(scene, at, cry) if cry is not None else None
        if cry is not None and wrong is not None:
            yield _draft(scene, at, cry, wrong)


def _cry(scene: Scene, right: int) -> int | None:
    """Where the speaker stops himself: "Ah, wait.", "no, hang on"."""
    for at in range(right - 1, max(0, right - _CRY), -1):
        if opens(scene, at) and cry_end(scene, at) > at:
            return None if asks(scene, (at, max(at + 1, unit_at(scene, right)[1]))) else at
    return None


def _given(scene: Scene, at: int, cry: int) -> int | None:
    """The latest place where the denied figure was given; of one kind alone, or with what the remark speaks of."""
    pieces = scene.pieces
    denied, held = pieces[at + 1], pieces[at - 1]
    if denied.number is None or held.number is None or denied.number.value == held.number.value:
        return None
    said = [
        place
        for place in scene.figures
        if place < cry
        and scene.measured(place).quantity.number.value == denied.number.value
        and kind_of(scene.measured(place)) is not None
        and all(one is None or alike(one, scene.measured(place)) for one in (denied.measured, held.measured))
    ]
    topic = scene.content(range(cry, at - 1))
    near = [place for place in said if topic & scene.context(place)]
    return next(reversed(near), None) if near or len(said) != 1 else said[0]


def _draft(scene: Scene, at: int, cry: int, wrong: int) -> Draft:
    pieces = scene.pieces
    first, denied, second, number = (
        scene.measured(wrong),
        pieces[at + 1].measured,
        pieces[at - 1].measured,
        pieces[at - 1].number,
    )
    gone = (first, denied) if denied is not None else (first,)
    spans = (wrong, wrong + 1), (at - 1, at)
    if (second is None or kind_of(second) is None) and number is not None:
        unit = first.quantity.unit
        return Draft(cry, at + 2, "this_session", *spans, gone, unit=unit, value=number.value)
    return Draft(cry, at + 2, "this_session", *spans, gone, second)
