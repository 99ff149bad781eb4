"""Neighbouring figures of which the second may hold instead of the first, and what speaks for it.

"It pulls 12, excuse the glasses, 17 ounces" against "12 at this end, 17 at that".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.evidence import Reasons
from extract.corrections.figure_pairs import (
    DENYING,
    JOINS,
    breaks,
    comparable,
    forms,
    is_bare,
    of_other_things,
    same_value,
)
from extract.corrections.pieces import Piece
from extract.corrections.scene import Scene, kind_of
from extract.corrections.signs import OWNING, Signs
from extract.corrections.subjects import of_another

NEAR, SKIPPED = 16, 2
"""Pieces between two neighbours, and figures tried behind each."""
_EXPLAINED_FAR = 28
"""The same where an edit phrase follows the first at once: "six inches, no, hang on, these are planks, so ..."."""
_AT_ONCE, _LEAD = 2, 5
"""Words between a figure and such a phrase behind it, and between such a phrase and the figure that holds."""
_BEHIND = 10
_QUOTED = 8
"""Words behind "I said" among which the figure is the quoted one."""
_CUT = frozenset({"IN", "NN", "NNS", "CC", "TO"})
_SAYING = frozenset({"say", "said", "told", "gave", "call", "called"})
_COMPARING = frozenset({"more", "less", "lower", "higher", "fewer", "longer", "shorter", "better", "lip", "than"})
_FIRST = frozenset({"i", "i've", "i'm", "i'd", "my", "me", "we", "i'll"})
_YOU = frozenset({"you", "you'd", "you're", "your"})
_EXPLAINED = (*OWNING, "pause", "deny", "bare_wrong", "quote", "recall", "holds")
_SIGNS = ("strong", "pause", "deny", "confess", "reread", "discard", "amend", "quote", "bare_wrong")


def near_pairs(scene: Scene, signs: Signs) -> Iterator[tuple[int, int]]:
    """Each figure with the next ones behind it that may be said in its place."""
    places = [at for at, piece in enumerate(scene.pieces) if piece.figure]
    for at, wrong in enumerate(places):
        for right in places[at + 1 : at + 1 + SKIPPED]:
            reach = _EXPLAINED_FAR if edited_at_once(scene, wrong) else NEAR
            if right - wrong <= reach and comparable(scene, wrong, right) and _offered(scene, signs, wrong, right):
                yield wrong, right


def edited_at_once(scene: Scene, wrong: int) -> int:
    """Behind the edit phrase that stands right behind a figure, or one word on; 0 where there is none."""
    for begin in range(wrong + 1, min(wrong + 1 + _AT_ONCE, len(scene.pieces))):
        if end := scene.edit_ends.get(begin):
            return end
        if scene.pieces[begin].figure or scene.pieces[begin].mark:
            break
    return 0


def _edited_before(scene: Scene, wrong: int, right: int) -> bool:
    """An edit phrase leads up to the second figure with only small words between: "no, it's 16"."""
    for at in range(right, max(wrong, right - _LEAD), -1):
        if at in scene.edit_begins and scene.edit_begins[at] > wrong:
            return True
        if scene.pieces[at - 1].text not in scene.words.fillers:
            return False
    return False


def _offered(scene: Scene, signs: Signs, wrong: int, right: int) -> bool:
    """The second is neither denied ("5, not 6"), nor a guess ("Five? No. Six?"), nor what was said before."""
    pieces = scene.pieces
    asked = any(piece.text in _SAYING for piece in pieces[max(0, wrong - 6) : wrong])
    if right + 1 < len(pieces) and pieces[right + 1].text == "o'clock":
        return False
    guessed = pieces[wrong].mark == "?" and not asked
    quote = signs.last("quote", wrong + 1, right)
    quoted = quote is not None and right - quote[1] <= _QUOTED
    quoted = quoted and quote is not None and not any(pieces[at].figure for at in range(wrong + 1, quote[0]))
    return not guessed and not quoted and pieces[right - 1].text not in DENYING


def near_reasons(scene: Scene, signs: Signs, wrong: int, right: int) -> Reasons:
    """What speaks for and against the second of two neighbouring figures holding instead of the first."""
    pieces = scene.pieces
    between = range(wrong + 1, right)
    found = signs.counts(_SIGNS, wrong + 1, right)
    for name in ("confess", "reread", "amend", "strong"):
        behind = signs.within(name, right + 1, right + _BEHIND)
        between_them = behind and any(pieces[at].measured for at in range(right + 1, behind[0]))
        if behind and not between_them and breaks(scene, right, behind[0]) <= 1:
            found[f"{name}_behind"] = 1.0
    left = {piece.text for piece in pieces[max(0, wrong - 6) : wrong + 3]}
    open_words = [
        at
        for at in between
        if not signs.explained(at, _EXPLAINED)
        and pieces[at].text not in scene.words.fillers
        and (pieces[at].text not in left or at <= wrong + 2)
        and not pieces[at].figure
    ]
    found["open_words"] = min(len(open_words), 6) / 3
    found["edit_next"] = float(0 < edited_at_once(scene, wrong) <= right)
    found["edit_before"] = float(_edited_before(scene, wrong, right))
    found["edit_only"] = float(bool(found["edit_next"] and found["edit_before"]))
    found["other_kind"] = float(_of_other_kind(scene, wrong, right))
    found["limit"] = float((one := pieces[right].measured) is not None and one.quantity.limit is not None)
    found["digit"] = float(is_bare(pieces[right]) and pieces[right - 1].text in ("a", "an"))
    found["retraced"] = float(_retraced(scene, wrong, right))
    found["says_again"] = float(_says_again(scene, right))
    found["explained"] = float(not open_words and len(between) > 0)
    found["gap"] = min(len(between), 12) / 6
    found["touching"] = float(right == wrong + 1)
    found |= forms(pieces[wrong], pieces[right])
    after = pieces[wrong + 1] if wrong + 1 < len(pieces) else None
    found["cut_off"] = float(
        is_bare(pieces[wrong]) and (bool(pieces[wrong].mark) or (after is not None and _cuts(signs, after, wrong + 1)))
    )
    found["joined"] = float(any(piece.text in JOINS for piece in pieces[max(wrong + 1, right - 2) : right]))
    found["joined_first"] = float(after is not None and after.text in JOINS)
    found["comparing"] = float(any(piece.text in _COMPARING for piece in pieces[wrong + 1 : right]))
    found["changed"] = float(signs.within("change", wrong + 1, right + 4) is not None)
    found["breaks"] = float(min(3, breaks(scene, wrong, right)))
    found["parallel"] = float(wrong > 0 and pieces[wrong - 1].text == pieces[right - 1].text and right - wrong > 1)
    found["set_off"] = float(bool(pieces[wrong].mark) and bool(pieces[right - 1].mark) and right - wrong > 1)
    found["own"] = float(any(piece.text in _FIRST for piece in pieces[wrong + 1 : right]))
    found["you_between"] = float(
        any(piece.text in ("you", "you'd", "you're", "your") for piece in pieces[wrong + 1 : right])
    )
    found["other_thing"] = float(of_other_things(scene, wrong, right))
    found["echo"] = float(any(same_value(pieces[at], pieces[wrong]) for at in between))
    found["asked"] = float(any(pieces[at].mark == "?" for at in range(wrong, right)))
    for name in ("quote", "session", "recall", "confess", "discard"):
        before = signs.last(name, max(0, wrong - _BEHIND), wrong + 1)
        if before and breaks(scene, before[1] - 1, wrong) <= 1:
            found[f"{name}_before"] = 1.0
    found["quote_session"] = float("quote_before" in found and "session_before" in found)
    found["denied_right"] = float(
        any(pieces[at].text in DENYING for at in range(max(wrong + 1, right - 2), right)) and right - wrong > 2
    )
    found["worked"] = float(signs.within("work", wrong + 1, right + 3) is not None)
    found["unsigned"] = float(not any(name.removesuffix("_behind").removesuffix("_before") in _SIGNS for name in found))
    found["affirmed"] = float(signs.within("affirm", max(0, wrong - 6), right + 5) is not None)
    told = signs.last("quote", max(0, wrong - _BEHIND), wrong + 1)
    found["another_subject"] = float(told is not None and of_another(scene, told[0], wrong, right))
    found["others"] = float(signs.within("others", max(0, wrong - 8), right) is not None)
    found["more_figures"] = float(sum(pieces[at].figure for at in between))
    return {name: value for name, value in found.items() if value}


def _of_other_kind(scene: Scene, wrong: int, right: int) -> bool:
    """The first left its unit out, and the one supplied is of another kind than the second's: "1.7. 7 grams"."""
    first, second = scene.pieces[wrong].measured, scene.pieces[right].measured
    if first is None or second is None:
        return False
    return None not in (kind_of(first), kind_of(second)) and kind_of(first) != kind_of(second)


def _retraced(scene: Scene, wrong: int, right: int) -> bool:
    """The words that led up to the first are said again before the second: "set it to 5, no, set it to 6"."""
    pieces = scene.pieces
    if wrong < 2 or right - wrong < 3:
        return False
    return [p.text for p in pieces[wrong - 2 : wrong]] == [p.text for p in pieces[right - 2 : right]]


def _says_again(scene: Scene, right: int) -> bool:
    """The second figure only says in another unit what stands between the two: "no, 1.6, that's 1/16 inch"."""
    second = scene.pieces[right].measured
    return second is not None and second.same_as is not None


def _cuts(signs: Signs, piece: Piece, at: int) -> bool:
    return piece.tag not in _CUT or signs.explained(at, ("strong", "pause", "deny", "amend", "reread"))
