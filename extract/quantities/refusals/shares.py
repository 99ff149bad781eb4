"""Shares, ratios and idioms: "a third of the way", "3 in 10", "so 7 to 10", "half the battle".

Leaves "a third of an inch" and "three quarters wide" alone.
"""

from __future__ import annotations

from extract.quantities.draft import Draft
from extract.quantities.scene import Scene

_FACTOR = 12
"""A bare factor up to this counts."""


def in_idiom(scene: Scene, draft: Draft) -> bool:
    """ "one of these", "half the battle", "a million times"."""
    return any(
        start <= draft.start < end and draft.end <= end + (draft.unit is None)
        for start, end in scene.idioms_at(draft.start)
    )


def is_ratio(scene: Scene, draft: Draft) -> bool:
    """ "3 in 10", "9 out of 10"."""
    tape = scene.tape
    if draft.number.low is not None and draft.unit is None and _worked_out(scene, draft):
        return True
    if draft.unit is not None or draft.number.form != "integer":
        return False
    if _is_divided(scene, draft):
        return True
    behind = scene.draft_at(draft.end + 1) if tape.text(draft.end) == "in" else None
    if behind is not None:
        return behind.number.form == "integer" and (behind.unit is None or behind.unit.kind == "length")
    return tape.text(draft.start - 1) == "in" and tape.kind(draft.start - 2) in ("digits", "ones", "teens")


def _is_divided(scene: Scene, draft: Draft) -> bool:
    """ "four over twelve is a third", "over two under two", and the factor of "that times three"."""
    tape = scene.tape
    before, after = scene.draft_before(draft), scene.draft_at(draft.end + 1)
    if tape.text(draft.start - 1) == "times" and draft.number.value <= _FACTOR:
        return True
    follows = before is not None and before.end == draft.start - 1 and _is_bare(before)
    precedes = after is not None and _is_bare(after)
    if tape.text(draft.end) == "over" and precedes and draft.number.value > 1:
        return True
    if tape.text(draft.start - 1) == "over" and follows and draft.number.value > 1:
        return True
    up_and_down = {tape.text(draft.start - 1), tape.text(draft.end)} == {"over", "under"} and precedes
    return up_and_down or ({tape.text(draft.start - 1), tape.text(draft.start - 3)} == {"over", "under"} and follows)


def _is_bare(draft: Draft) -> bool:
    return draft.unit is None and draft.number.form == "integer"


def _worked_out(scene: Scene, draft: Draft) -> bool:
    """ "280 to 400, so 7 to 10": two numbers just said stand as these two do."""
    low, high = draft.ends
    said = [value for value in scene.values_before(draft, 3) if value > 0]
    return low > 0 and any(one * high == other * low for one in said for other in said)


def _near_measure(scene: Scene, draft: Draft) -> bool:
    """True where a length was just said, or is named beside: "the clearance is a hundredth"."""
    before = scene.draft_before(draft)
    said = before is not None and before.unit is not None and before.unit.kind == "length"
    if said and before is not None and scene.sentence(before.start) == scene.sentence(draft.start):
        return True
    near = scene.topics.between(draft.start - 6, draft.end + 3)
    return any(hit.topic.kind == "length" and hit.topic.role in ("name", "adjective") for hit in near)


def is_bare_half(scene: Scene, draft: Draft) -> bool:
    """ "half" alone, without article and unit: "half of it", "cut it in half", "a fish and a half"."""
    if (
        draft.unit is None
        and draft.number.value < 1
        and scene.tape.text(draft.start - 1) == "and"
        and scene.tape.is_noun(draft.start - 2)
    ):
        return scene.tape.text(draft.end - 1) == "half"
    return draft.unit is None and draft.end == draft.start + 1 and scene.tape.text(draft.start) in ("half", "quarter")


_MARKED_ON_A_RULE = 16
"""Denominator from which a part is one of an inch: nobody shares a thing out in sixteenths or sixty-fourths."""


def is_share(scene: Scene, draft: Draft) -> bool:
    """ "a third of the way", "two thirds": a share of something, not a size."""
    if draft.unit or draft.number.form != "fraction":
        return False
    below = draft.number.denominator or 1
    if scene.tape.text(draft.end - 1) == "halves":
        return True
    if below & (below - 1):
        if scene.tape.kind(draft.start) == "slash" and below > _FACTOR and below % _FACTOR == 0:
            return False  # "a third of 1/8 is 1/24"
        if scene.tape.kind(draft.start) == "article" and below in (10, 100):
            return below == 100 and not _near_measure(scene, draft)
        return below not in (10, 100) or not scene.tape.lexemes[draft.end - 1].plural
    if below >= _MARKED_ON_A_RULE:
        return False
    return scene.tape.text(draft.end) == "of" and scene.tape.text(draft.end + 1) in (
        "the",
        "it",
        "them",
        "that",
        "this",
        "my",
        "your",
        "its",
        "those",
        "these",
        "what",
    )
