"""Shares, ratios and idioms: "a third of the way", "3 in 10", "so 7 to 10", "half the battle".

Leaves "a third of an inch" and "three quarters wide" alone.
"""

from __future__ import annotations

from extract.quantities.draft import Draft
from extract.quantities.scene import Scene


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
    behind = scene.draft_at(draft.end + 1) if tape.text(draft.end) == "in" else None
    if behind is not None:
        return behind.unit is None and behind.number.form == "integer"
    return tape.text(draft.start - 1) == "in" and tape.kind(draft.start - 2) in ("digits", "ones", "teens")


def _worked_out(scene: Scene, draft: Draft) -> bool:
    """ "280 to 400, so 7 to 10": two numbers just said stand as these two do."""
    low, high = draft.ends
    said = [value for value in scene.values_before(draft, 3) if value > 0]
    return low > 0 and any(one * high == other * low for one in said for other in said)


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
        one_tenth = below == 10 and scene.tape.kind(draft.start) == "article"
        return not one_tenth and (below not in (10, 100) or not scene.tape.lexemes[draft.end - 1].plural)
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
