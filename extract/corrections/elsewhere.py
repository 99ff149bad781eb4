"""What was said belongs to another thing, and what holds for this one.

Takes "tyre up to ninety five. No, that's for racing, eighty five psi" and "hang on, two cross, that's the front wheel,
this is three cross"; refuses "no, that's the customer's, I bought it for 5 pounds" and "oh, that's the good one".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.openings import opens
from extract.corrections.scene import Draft, Scene, alike, differ
from extract.corrections.turns import before, behind, cry_end, is_stated, unit_at

_ECHO = 4
"""Words of what was said before, said again: "two cross, that's ..."."""
_OTHER = 6
"""Words that name the other thing."""
_BACK = 60
"""Words before the remark among which what it says again was said."""
_CLAIM = 10
"""Words before the remark among which the figure was said."""
_BELONGS = frozenset({"that's", "those", "that"})
_WEAK = frozenset({"well", "oh well", "listen"})
"""By themselves these turn nothing round."""
_IS = frozenset({"is", "was", "are", "were"})
_WHOSE = frozenset({"for", "the", "a", "my", "on", "his", "her", "what", "with", "off", "from", "your"})
_HERE = frozenset({"this", "these", "here", "ours", "mine"})
_HERE_IS = frozenset({"is", "are", "it's", "they're", "takes", "wants", "gets", "goes", "one's", "has", "needs", "one"})
_LEADING = frozenset({"so", "it", "it's", "use", "this", "one's", "is", "one", "to", "here", "these", "are", "'s"})


def find_elsewhere(scene: Scene) -> Iterator[Draft]:
    """Each remark that gives what was said just before to another thing."""
    at = 2
    while at < len(scene.pieces) - 4:
        end = cry_end(scene, at) if opens(scene, at) else at
        if end > at and scene.text(at, end).lower().rstrip(",.") not in _WEAK:
            found = _found(scene, at, end)
            if found is not None:
                yield found
        at = max(end, at + 1)


def _found(scene: Scene, begin: int, end: int) -> Draft | None:
    pieces = scene.pieces
    that = next((k for k in range(end, min(end + _ECHO, len(pieces) - 3)) if pieces[k].text in _BELONGS), None)
    if that is None:
        return None
    other = that + 1 + (pieces[that + 1].text in _IS)
    named = pieces[that].text == "that's" or other > that + 1
    claim = _claim(scene, begin, range(end, that))
    if not named or pieces[other].text not in _WHOSE or claim is None or not is_stated(scene, claim):
        return None
    if not _echoes(scene, range(end, that), claim):
        return None
    return _figures(scene, begin, other, claim) or _words(scene, begin, other, claim)


def _claim(scene: Scene, begin: int, echo: range) -> tuple[int, int] | None:
    """What was said just before; where some of it is said again, the latest sentence that has it."""
    said = [_said(scene, at) for at in echo if scene.pieces[at].tag not in ("DT", "IN")]
    near = range(begin - 1, max(-1, begin - _BACK), -1)
    found = next((at for at in near if said and _said(scene, at) == said[0]), None)
    if found is None or found >= unit_at(scene, begin)[0]:
        return before(scene, begin)
    return unit_at(scene, found)


def _echoes(scene: Scene, echo: range, claim: tuple[int, int]) -> bool:
    """What stands before "that's" was all said just before; nothing need stand there."""
    pieces = scene.pieces
    said = {_said(scene, at) for at in range(*claim)}
    return all(pieces[at].tag == "DT" or _said(scene, at) in said for at in echo)


def _word(scene: Scene, at: int) -> str:
    """A word as said: "one's" may have been read as a number."""
    return scene.text(at, at + 1).lower()


def _said(scene: Scene, at: int) -> str:
    number = scene.pieces[at].number
    return str(number.value) if number else scene.pieces[at].text


def _figures(scene: Scene, begin: int, other: int, claim: tuple[int, int]) -> Draft | None:
    """The figure that was said, and the first one of its kind behind the other thing."""
    pieces = scene.pieces
    near = range(begin - 1, max(claim[0], begin - _CLAIM) - 1, -1)
    wrong = next((at for at in near if pieces[at].figure), None)
    ahead = range(other + 1, min(other + _OTHER + 2, len(pieces)))
    right = next((at for at in ahead if pieces[at].measured), None)
    if wrong is None or right is None:
        return None
    second, number = pieces[right].measured, pieces[wrong].number
    if second is None or not second.quantity.unit_said or number is None or second.quantity.difference:
        return None
    if not (opens(scene, right) or _word(scene, right - 1) in _LEADING or not scene.marked):
        return None
    first = pieces[wrong].measured
    if first is None:
        differs = number.value != second.quantity.number.value
    else:
        differs = alike(first, second) and differ(first, second)
    if not differs or (right + 1 < len(pieces) and not pieces[right].mark and pieces[right + 1].text in ("off", "of")):
        return None
    gone = (first,) if first is not None else ()
    return Draft(begin, right + 1, "this_session", (wrong, wrong + 1), (right, right + 1), gone, second)


def _words(scene: Scene, begin: int, other: int, claim: tuple[int, int]) -> Draft | None:
    """What is said of this one behind the other thing, of the same as was said before."""
    pieces = scene.pieces
    for at in range(other + 1, min(other + _OTHER, len(pieces) - 2)):
        if pieces[at].text not in _HERE or _word(scene, at + 1) not in _HERE_IS or not _parted(scene, at):
            continue
        answer = behind(scene, at)
        if answer is None or answer[1] <= at + 2:
            return None
        said, held = scene.content(range(*claim)), scene.content(range(at + 2, answer[1]))
        counterparts = scene.counterparts_in(*claim)
        swapped = any(scene.words.swaps[word] & counterparts for word in scene.counterparts_in(at + 2, answer[1]))
        if (said & held and (held - said or _numbers(scene, at, answer[1]))) or swapped:
            return Draft(begin, answer[1], "this_session", claim, (at, answer[1]))
    return None


def _parted(scene: Scene, at: int) -> bool:
    """A new clause begins; in captions without marks it may anywhere."""
    return opens(scene, at) or not scene.marked


def _numbers(scene: Scene, begin: int, end: int) -> bool:
    return any(scene.pieces[at].figure for at in range(begin, end))
