"""A side or a direction named anew by its counterpart.

Takes "the port shroud's gone. Och, starboard. That's the starboard one" and "no, sorry, the upper one's fine. It's the
lower pivot that has snapped"; refuses "the left one's done. Oh, and the right one" and "the top is oak, no, really".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.openings import opens
from extract.corrections.plain import PlainWords, plain_words
from extract.corrections.scene import Draft, Scene
from extract.corrections.turns import asks, cry_end, unit_at

_BACK = 34
"""Words before the cry among which the other side was named."""
_AGAIN = 8
_ALONE = 2
_MEANT = 14
"""Words behind the cry among which the side that is meant is named."""
_NAMING = frozenset({"it's", "that's", "it", "that", "they're"})
_BOTH = frozenset({"both", "either", "also", "too", "another", "other", "then", "and", "or", "next", "same", "now"})


def find_sides(scene: Scene) -> Iterator[Draft]:
    """Each cry behind which the counterpart of a side named before is named."""
    at = 2
    while at < len(scene.pieces) - 1:
        end = cry_end(scene, at) if opens(scene, at) else at
        if end > at and end < len(scene.pieces):
            found = _bare(scene, at, end) or _sound(scene, at, end)
            if found is not None:
                yield found
        at = max(end, at + 1)


def _bare(scene: Scene, begin: int, end: int) -> Draft | None:
    """ "Och, starboard. That's the starboard one": the side alone, said once more."""
    words, pieces = plain_words(), scene.pieces
    at = end + 1 if pieces[end].text == "the" and end + 1 < len(pieces) else end
    side = pieces[at].text
    until = at + 1
    while until < len(pieces) and not opens(scene, until) and _is_end(scene, until):
        until += 1
    if side not in words.sides or not opens(scene, until):
        return None
    again = any(piece.text == side for piece in pieces[until : until + _AGAIN])
    wrong = _named(scene, side, begin, words)
    if wrong is None or not again:
        return None
    end = _name_end(scene, at)
    return Draft(begin, end, "this_session", _clause(scene, wrong, begin), (at, end))


def _is_end(scene: Scene, at: int) -> bool:
    """The name of a side ends with it: "one", which may have been read as a number."""
    return scene.text(at, at + 1).lower().rstrip(".,!") in plain_words().behind_side


def _sound(scene: Scene, begin: int, end: int) -> Draft | None:
    """ "The upper one's perfect. It's the lower pivot": the side named before is fine, the other is meant."""
    words, pieces = plain_words(), scene.pieces
    last = min(end + _MEANT, len(pieces) - 2)
    freed = _freed(scene, end, last)
    if freed is None:
        return None
    wrong_side, behind = freed
    for at in range(behind, last):
        if pieces[at].text in _NAMING and pieces[at + 1].text in ("the", "is", "his", "her"):
            right = next((k for k in range(at + 1, at + 4) if pieces[k].text in words.sides[wrong_side]), None)
            wrong = _named(scene, pieces[right].text, begin, words) if right is not None else None
            if right is not None and wrong is not None and pieces[wrong].text == wrong_side:
                until = unit_at(scene, right)[1]
                return Draft(begin, until, "this_session", _clause(scene, wrong, begin), (at + 1, until))
    return None


def _freed(scene: Scene, end: int, last: int) -> tuple[str, int] | None:
    """The side that is told to be fine, and behind that."""
    words, pieces = plain_words(), scene.pieces
    named = next((k for k in range(end, min(end + 3, last)) if pieces[k].text in words.sides), None)
    if named is None:
        return None
    fine = next((k for k in range(named + 1, min(named + 5, last)) if pieces[k].text in words.sound), None)
    denied = fine is not None and any(
        piece.text in ("not", "isn't", "but") or piece.mark for piece in pieces[named:fine]
    )
    return None if fine is None or denied else (pieces[named].text, fine + 1)


def _named(scene: Scene, side: str, begin: int, words: PlainWords) -> int | None:
    """Where a counterpart was named last, if the side itself was not named beside it."""
    pieces = scene.pieces
    for at in range(begin - 1, max(-1, begin - _BACK), -1):
        if pieces[at].text == side:
            return None
        if pieces[at].text in words.sides[side]:
            near = {piece.text for piece in pieces[max(0, at - 2) : at + 3]}
            claim = unit_at(scene, at)
            return None if near & _BOTH or asks(scene, (claim[0], max(claim[0] + 1, min(claim[1], begin)))) else at
    return None


def _clause(scene: Scene, wrong: int, begin: int) -> tuple[int, int]:
    start, end = unit_at(scene, wrong)
    return start, min(end, begin)


def _name_end(scene: Scene, at: int) -> int:
    """Behind the sentence that names it once more where the name stands alone."""
    end = unit_at(scene, at)[1]
    return unit_at(scene, end)[1] if end < len(scene.pieces) and end - at <= _ALONE else end
