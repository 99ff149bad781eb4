"""Pairs of figures of which the second may hold instead of the first, and what speaks for it.

Near pairs follow one another: "it pulls 12, excuse the glasses, 17 ounces". Far pairs have other talk between them:
"the packing, I gave you 30 thou, and it's 40", where 30 thou was said minutes ago.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.corrections.evidence import Reasons
from extract.corrections.openings import opens
from extract.corrections.pieces import Piece
from extract.corrections.scene import Scene, alike, differ, kind_of, says_again, stem
from extract.corrections.signs import OWNING, Signs

NEAR, SKIPPED = 16, 2
_BEHIND = 10
_BEFORE, _AFTER = 32, 14
_CUT = frozenset({"IN", "NN", "NNS", "CC", "TO"})
_JOINS = frozenset(
    {"and", "to", "or", "by", "with", "then", "plus", "but", "than", "x", "times", "over", "into", "out"}
)
_DENYING = frozenset({"not", "isn't", "wasn't", "aren't", "weren't", "never"})
_SAYING = frozenset({"say", "said", "told", "gave", "call", "called"})
_COMPARING = frozenset({"more", "less", "lower", "higher", "fewer", "longer", "shorter", "better", "lip", "than"})
_FIRST = frozenset({"i", "i've", "i'm", "i'd", "my", "me", "we", "i'll"})
_EXPLAINED = (*OWNING, "pause", "deny", "bare_wrong", "quote", "recall", "holds")
_NEAR_SIGNS = ("strong", "pause", "deny", "confess", "reread", "discard", "amend", "quote", "bare_wrong")
_FAR_SIGNS = (
    "quote", "recall", "confess", "discard", "amend", "reread", "bare_wrong", "deny", "strong", "session", "affirm",
    "change", "others", "work",
)  # fmt: skip
_CANDIDATES = 5


def near_pairs(scene: Scene, signs: Signs) -> Iterator[tuple[int, int]]:
    """Each figure with the next ones behind it that may be said in its place."""
    places = [at for at, piece in enumerate(scene.pieces) if piece.figure]
    for at, wrong in enumerate(places):
        for right in places[at + 1 : at + 1 + SKIPPED]:
            if right - wrong <= NEAR and comparable(scene, wrong, right) and _offered(scene, signs, wrong, right):
                yield wrong, right


def _offered(scene: Scene, signs: Signs, wrong: int, right: int) -> bool:
    """The second is neither denied ("5, not 6"), nor a guess ("Five? No. Six?"), nor what was said before."""
    pieces = scene.pieces
    asked = any(piece.text in _SAYING for piece in pieces[max(0, wrong - 6) : wrong])
    guessed = pieces[wrong].mark == "?" and not asked
    quote = signs.last("quote", wrong + 1, right)
    quoted = (
        quote is not None and right - quote[1] <= 3 and not any(pieces[at].figure for at in range(wrong + 1, quote[0]))
    )
    return not guessed and not quoted and pieces[right - 1].text not in _DENYING


def comparable(scene: Scene, wrong: int, right: int) -> bool:
    """Two figures of one kind, or bare ones, that differ."""
    first, second = scene.pieces[wrong], scene.pieces[right]
    if first.measured and second.measured:
        one, other = first.measured, second.measured
        return alike(one, other) and differ(one, other) and not says_again(one, other)
    if first.number is None or second.number is None or first.number.value == second.number.value:
        return False
    if not first.measured and second.measured:
        return second.measured.quantity.unit is not None
    return True


def near_reasons(scene: Scene, signs: Signs, wrong: int, right: int) -> Reasons:
    """What speaks for and against the second of two neighbouring figures holding instead of the first."""
    pieces = scene.pieces
    between = range(wrong + 1, right)
    found = signs.counts(_NEAR_SIGNS, wrong + 1, right)
    for name in ("confess", "reread", "amend", "strong"):
        behind = signs.within(name, right + 1, right + _BEHIND)
        if behind and breaks(scene, right, behind[0]) <= 1:
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
    found["explained"] = float(not open_words and len(between) > 0)
    found["gap"] = min(len(between), 12) / 6
    found["touching"] = float(right == wrong + 1)
    found |= _forms(pieces[wrong], pieces[right])
    after = pieces[wrong + 1] if wrong + 1 < len(pieces) else None
    found["cut_off"] = float(
        _bare(pieces[wrong]) and (bool(pieces[wrong].mark) or (after is not None and _cuts(signs, after, wrong + 1)))
    )
    found["joined"] = float(any(piece.text in _JOINS for piece in pieces[max(wrong + 1, right - 2) : right]))
    found["joined_first"] = float(after is not None and after.text in _JOINS)
    found["comparing"] = float(any(piece.text in _COMPARING for piece in pieces[wrong + 1 : right]))
    found["changed"] = float(signs.within("change", wrong + 1, right + 4) is not None)
    found["breaks"] = float(min(3, breaks(scene, wrong, right)))
    found["parallel"] = float(wrong > 0 and pieces[wrong - 1].text == pieces[right - 1].text and right - wrong > 1)
    found["set_off"] = float(bool(pieces[wrong].mark) and bool(pieces[right - 1].mark) and right - wrong > 1)
    found["own"] = float(any(piece.text in _FIRST for piece in pieces[wrong + 1 : right]))
    found["you"] = float(any(piece.text in ("you", "you'd", "you're", "your") for piece in pieces[wrong + 1 : right]))
    found["other_thing"] = float(_other_thing(scene, wrong, right))
    found["echo"] = float(any(_same_value(pieces[at], pieces[wrong]) for at in between))
    found["asked"] = float(any(pieces[at].mark == "?" for at in range(wrong, right)))
    for name in ("quote", "session", "recall", "confess", "discard"):
        before = signs.last(name, max(0, wrong - _BEHIND), wrong + 1)
        if before and breaks(scene, before[1] - 1, wrong) <= 1:
            found[f"{name}_before"] = 1.0
    found["quote_session"] = float("quote_before" in found and "session_before" in found)
    found["denied_right"] = float(
        any(pieces[at].text in _DENYING for at in range(max(wrong + 1, right - 2), right)) and right - wrong > 2
    )
    found["worked"] = float(signs.within("work", wrong + 1, right + 3) is not None)
    found["unsigned"] = float(
        not any(name.removesuffix("_behind").removesuffix("_before") in _NEAR_SIGNS for name in found)
    )
    found["affirmed"] = float(signs.within("affirm", max(0, wrong - 6), right + 5) is not None)
    found["others"] = float(signs.within("others", max(0, wrong - 8), right) is not None)
    found["more_figures"] = float(sum(pieces[at].figure for at in between))
    return {name: value for name, value in found.items() if value}


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
        borders += _border(scene, begin)
        if borders > 3:
            break
        begin -= 1
    end, borders = right + 1, 0
    while end < len(scene.pieces) and end - right < _AFTER:
        borders += _border(scene, end)
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
    for name in _FAR_SIGNS:
        if signs.within(name, begin, right):
            found[name] = 1.0
        if signs.within(name, right + 1, end) and name in ("confess", "reread", "amend", "discard", "quote"):
            found[f"{name}_behind"] = 1.0
    quote = signs.last("quote", begin, end)
    first = pieces[wrong].measured
    found["inside"] = float(inside)
    found["behind"] = float(wrong > right)
    found["quoted"] = float(inside and quote is not None and -4 <= wrong - quote[1] <= 12)
    found["after_quote"] = float(quote is not None and quote[1] <= right)
    earlier = scene.said_before(first, min(wrong, begin)) if first else ()
    found["said_before"] = float(inside and any(at < wrong for at in earlier))
    again = [at for at in range(begin, end) if at not in (wrong, right) and _same_value(pieces[at], pieces[wrong])]
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
    found["bare"] = float(second is None)
    found["counting"] = float(second is None and _counts(scene, right))
    found |= _forms(pieces[wrong], pieces[right])
    held = any(signs.covers("holds", at) for at in (right - 1, right - 2) if at > 0)
    found["held"] = float(held or opens(scene, right))
    kind = kind_of(second) if second else None
    between = [
        at
        for at in range(max(begin, wrong + 1), right)
        if (one := pieces[at].measured) is not None and kind_of(one) == kind
    ]
    between = [at for at in between if not _same_value(pieces[at], pieces[wrong])]
    found["others_between"] = min(len(between), 2) / 2
    found["near"] = float(0 < right - wrong <= 14)
    found["joined"] = float(any(piece.text in _JOINS for piece in pieces[right - 1 : right]))
    found["denied"] = float(any(pieces[at].text in _DENYING for at in range(max(0, wrong - 2), wrong)) and inside)
    found["own_denied"] = float(any(pieces[at].text in _DENYING for at in range(max(0, right - 2), right)))
    found["asked"] = float(inside and pieces[wrong].mark == "?")
    return {name: value for name, value in found.items() if value}


def breaks(scene: Scene, begin: int, end: int) -> int:
    """How many sentences end between two places; without marks, how many breaths."""
    return sum(_border(scene, at) for at in range(begin + 1, end + 1))


def _border(scene: Scene, at: int) -> bool:
    """A sentence begins at a place; without marks, a breath."""
    if at <= 0 or at >= len(scene.pieces):
        return False
    before = scene.pieces[at - 1]
    return before.ends or (not scene.marked and before.cue != scene.pieces[at].cue)


def _forms(wrong: Piece, right: Piece) -> Reasons:
    """How the two figures look beside each other."""
    first, second = wrong.number, right.number
    if first is None or second is None:
        return {}
    ratio = abs(second.value / first.value) if first.value else Fraction(0)
    same_unit = bool(wrong.measured and right.measured and wrong.measured.quantity.unit == right.measured.quantity.unit)
    return {
        "close": float(Fraction(1, 2) <= ratio <= 2),
        "wide": float(ratio > 4 or ratio < Fraction(1, 4)),
        "same_form": float(first.form == second.form and first.decimals == second.decimals),
        "same_denominator": float(first.denominator is not None and first.denominator == second.denominator),
        "same_unit": float(same_unit),
        "unit_supplied": float(_bare(wrong) and not _bare(right)),
        "unit_dropped": float(not _bare(wrong) and _bare(right)),
        "both_bare": float(wrong.measured is None and right.measured is None),
        "range": float((first.low is None) != (second.low is None)),
    }


def _bare(piece: Piece) -> bool:
    return piece.measured is None or not piece.measured.quantity.unit_said


def _cuts(signs: Signs, piece: Piece, at: int) -> bool:
    return piece.tag not in _CUT or signs.explained(at, ("strong", "pause", "deny", "amend", "reread"))


def _same_value(one: Piece, other: Piece) -> bool:
    return one.number is not None and other.number is not None and one.number.value == other.number.value


def _counts(scene: Scene, at: int) -> bool:
    """A noun stands behind a bare number: "two films"."""
    pieces = scene.pieces
    return at + 1 < len(pieces) and not pieces[at].mark and pieces[at + 1].tag in ("NN", "NNS", "JJ")


def _other_thing(scene: Scene, wrong: int, right: int) -> bool:
    first, second = scene.pieces[wrong].measured, scene.pieces[right].measured
    if first is None or second is None:
        counted = [stem(scene.pieces[at + 1].text) for at in (wrong, right) if _counts(scene, at)]
        return len(counted) == 2 and counted[0] != counted[1]
    return (
        None not in (first.attribute, second.attribute, first.item, second.item)
        and first.attribute != second.attribute
        and first.item != second.item
    )
