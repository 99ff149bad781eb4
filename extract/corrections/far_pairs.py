"""Figures said long before that another may hold instead of, and what speaks for it.

"The packing, I gave you 30 thou, and it's 40", where 30 thou was said minutes ago.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.evidence import Reasons
from extract.corrections.figure_pairs import (
    DENYING,
    JOINS,
    begins_anew,
    comparable,
    counts_things,
    forms,
    same_value,
)
from extract.corrections.near_pairs import NEAR
from extract.corrections.openings import opens
from extract.corrections.pieces import Piece
from extract.corrections.scene import Scene, kind_of
from extract.corrections.signs import Signs
from extract.corrections.subjects import of_another

_BEHIND = 10
_BEFORE, _AFTER = 32, 14
"""Pieces looked at on either side of a figure."""
_SIGNS = (
    "quote", "recall", "confess", "discard", "amend", "reread", "bare_wrong", "deny", "strong", "session", "affirm",
    "change", "others", "work",
)  # fmt: skip
_EXPLAINING = ("confess", "reread", "amend", "discard", "quote")
_OBJECT = 5
"""Pieces behind "I told you" in which the figure stands that was told."""
_CANDIDATES = 5
_CLOSE = 6
"""Pieces before a figure that tell best what it is of."""
_RARE = 5
"""A word that is said no more often tells of one thing."""


def far_pairs(scene: Scene, signs: Signs) -> Iterator[tuple[int, int]]:
    """Each figure near a sign of retraction, with the earlier figures that it may hold instead of."""
    pieces = scene.pieces
    for right, piece in enumerate(pieces):
        if not piece.figure:
            continue
        begin, end = window(scene, right)
        if not any(
            signs.within(name, begin, end)
            for name in ("quote", "recall", "confess", "discard", "amend", "session", "reread")
        ):
            continue
        pool = [at for at in range(right - 1, max(-1, begin - 1), -1) if pieces[at].figure]
        pool += [at for at in range(right + 1, min(right + _BEHIND, end)) if pieces[at].figure]
        if piece.measured:
            topic = scene.content(range(begin, min(end, right + 4))) | scene.context(right)
            pool += scene.about(topic, kind_of(piece.measured), begin)[:_CANDIDATES]
        else:
            pool += scene.about(scene.content(range(begin, min(end, right + 4))), None, begin)[:_CANDIDATES]
        for wrong in dict.fromkeys(pool):
            near = 0 < right - wrong <= NEAR
            if not near and comparable(scene, wrong, right) and (piece.measured or pieces[wrong].measured):
                yield wrong, right


def window(scene: Scene, right: int) -> tuple[int, int]:
    """The sentences about a figure: those before it among which a mistake is owned to, and the one behind."""
    begin, borders = right, 0
    while begin > 0 and right - begin < _BEFORE:
        borders += begins_anew(scene, begin)
        if borders > 3:
            break
        begin -= 1
    end, borders = right + 1, 0
    while end < len(scene.pieces) and end - right < _AFTER:
        borders += begins_anew(scene, end)
        if borders > 1:
            break
        end += 1
    return begin, end


def far_reasons(scene: Scene, signs: Signs, wrong: int, right: int) -> Reasons:
    """What speaks for and against a figure's holding instead of one said long before, or quoted beside it."""
    pieces = scene.pieces
    begin, end = window(scene, right)
    inside = begin <= wrong < end
    found: Reasons = {}
    for name in _SIGNS:
        if signs.within(name, begin, right):
            found[name] = 1.0
        if name in _EXPLAINING and _explained_behind(scene, signs, name, right, end):
            found[f"{name}_behind"] = 1.0
    quote = signs.last("quote", begin, end)
    first = pieces[wrong].measured
    found["inside"] = float(inside)
    found["behind"] = float(wrong > right)
    found["quoted"] = float(inside and quote is not None and -4 <= wrong - quote[1] <= 12)
    found["after_quote"] = float(quote is not None and quote[1] <= right)
    earlier = scene.said_before(first, min(wrong, begin)) if first else ()
    found["said_before"] = float(inside and any(at < wrong for at in earlier))
    again = [at for at in range(begin, end) if at not in (wrong, right) and same_value(pieces[at], pieces[wrong])]
    found["named_again"] = float(not inside and bool(again))
    words = scene.content(range(max(begin, right - 16), min(end, right + 6)))
    about = scene.context(wrong) if first else scene.content(range(max(0, wrong - 8), min(wrong + 6, len(pieces))))
    shared = len(words & about)
    found["shared"] = min(shared, 3) / 3 if not inside else 0.0
    second = pieces[right].measured
    if first and second:
        found["same_attribute"] = float(first.attribute is not None and first.attribute == second.attribute)
        found["other_attribute"] = float(
            None not in (first.attribute, second.attribute) and first.attribute != second.attribute
        )
        found["same_item"] = float(first.item is not None and first.item == second.item)
    found["digits_turned"] = float(_turned(pieces[wrong], pieces[right]))
    found["same_behind"] = float(not inside and _same_behind(scene, wrong, right))
    found["thing_named"] = _thing_named(scene, wrong, begin, right) if not inside else 0.0
    found["bare"] = float(second is None)
    found["counting"] = float(second is None and counts_things(scene, right))
    found |= forms(pieces[wrong], pieces[right])
    held = any(signs.covers("holds", at) for at in (right - 1, right - 2) if at > 0)
    found["held"] = float(held or opens(scene, right))
    kind = kind_of(second) if second else None
    between = [
        at
        for at in range(max(begin, wrong + 1), right)
        if (one := pieces[at].measured) is not None and kind_of(one) == kind
    ]
    between = [at for at in between if not same_value(pieces[at], pieces[wrong])]
    found["others_between"] = min(len(between), 2) / 2
    told = quote is not None and quote[0] < wrong < right
    found["another_subject"] = float(bool(told and quote) and of_another(scene, quote[0] if quote else 0, wrong, right))
    found["near"] = float(0 < right - wrong <= 14)
    found["joined"] = float(any(piece.text in JOINS for piece in pieces[right - 1 : right]))
    found["denied"] = float(any(pieces[at].text in DENYING for at in range(max(0, wrong - 2), wrong)) and inside)
    found["own_denied"] = float(any(pieces[at].text in DENYING for at in range(max(0, right - 2), right)))
    found["asked"] = float(inside and pieces[wrong].mark == "?")
    return {name: value for name, value in found.items() if value}


def _turned(wrong: Piece, right: Piece) -> bool:
    """The same digits in another order: 46 and 64."""
    if wrong.number is None or right.number is None or wrong.number.value == right.number.value:
        return False
    first, second = (str(float(one.number.value)).strip("0.") for one in (wrong, right) if one.number)
    return len(first) > 1 and sorted(first) == sorted(second)


def _same_behind(scene: Scene, wrong: int, right: int) -> bool:
    """The same word tells behind both what they are: "forty six long", "sixty four long"."""
    pieces = scene.pieces
    if right + 1 >= len(pieces) or pieces[wrong].mark or pieces[right].mark:
        return False
    return bool(scene.content(range(wrong + 1, wrong + 2)) & scene.content(range(right + 1, right + 2)))


def _thing_named(scene: Scene, wrong: int, begin: int, right: int) -> float:
    """How much of the words right about an earlier figure the remark says again: "those foot screws"."""
    own = scene.content(range(max(0, wrong - _CLOSE), min(len(scene.pieces), wrong + 3)))
    said = scene.content(range(begin, min(right + 4, len(scene.pieces))))
    rare = [word for word in own & said if scene.often(word) <= _RARE]
    return min(len(rare), 3) / 3


def _explained_behind(scene: Scene, signs: Signs, name: str, right: int, end: int) -> bool:
    """A sign behind the figure, with no other figure before it or, where it quotes, right behind it."""
    behind = signs.within(name, right + 1, end)
    if behind is None:
        return False
    reach = range(behind[1], min(behind[1] + _OBJECT, len(scene.pieces))) if name == "quote" else range(0)
    return not any(scene.pieces[at].measured for at in (*range(right + 1, behind[0]), *reach))
