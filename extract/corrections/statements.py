"""Statements that a remark may take back and what is said instead.

"I said deal, didn't I, for the runners? I've just smelt it. It's oak": the claim is "deal, didn't I, for the runners",
the answer "it's oak". Where nothing is quoted the claim is what was said before the remark, or an earlier sentence
about the same that the answer contradicts.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from extract.corrections.openings import opens
from extract.corrections.scene import Scene
from extract.corrections.signs import Signs

ANCHORS = ("quote", "confess", "discard", "amend", "strong", "recall", "reread", "session")
_LONGEST = 18
_UNITS = 3
_AHEAD = 36
BACK = 24
_COUNTERPART = 2
"""How many shared words a counterpart is worth: "in front of the foot", "behind the foot"."""
_SPEAKER = frozenset({"i", "i've", "i'd", "we", "my", "me"})


@dataclass(frozen=True, slots=True)
class Statement:
    """A remark at `begin`, the claim that it may take back, and the answer; places are pieces, ends exclusive."""

    anchor: str
    begin: int
    claim: tuple[int, int]
    answer: tuple[int, int]
    quoted: bool
    """The claim stands in the remark itself: "I said deal"."""


def statements(scene: Scene, signs: Signs, units: list[int]) -> Iterator[Statement]:
    """Each remark with each answer that may belong to it."""
    for one in _every(scene, signs, units):
        claim, answer = scene.content(range(*one.claim)), scene.content(range(*one.answer))
        if not (answer and answer <= claim) and not _upheld(scene, one, claim):
            yield one


def _upheld(scene: Scene, one: Statement, claim: frozenset[str]) -> bool:
    """The answer says that the claim is right: "No, thick is what runs, thin is right"."""
    pieces = scene.pieces
    return any(
        pieces[at].text == "right"
        and pieces[at - 1].text in ("is", "was", "are")
        and scene.content(range(at - 2, at - 1)) & claim
        for at in range(one.answer[0] + 2, one.answer[1])
    )


def _every(scene: Scene, signs: Signs, units: list[int]) -> Iterator[Statement]:
    for anchor in ANCHORS:
        for begin, end in signs.all(anchor):
            if anchor == "quote":
                yield from _quoted(scene, signs, units, begin, end)
            elif anchor == "session":
                yield from _done_then(scene, units, begin)
            elif _no_such(scene, begin, end):
                continue
            elif opens(scene, begin) or opens(scene, end) or end - begin > 1:
                yield from _remarked(scene, units, anchor, begin, end)


def _no_such(scene: Scene, begin: int, end: int) -> bool:
    """The "no" belongs to the noun behind it: "no polish, it only gums the strings"."""
    pieces = scene.pieces
    lone = end == begin + 1 and pieces[begin].text == "no" and not pieces[begin].mark
    return lone and end < len(pieces) and pieces[end].tag in ("NN", "NNS") and pieces[begin].tag == "DT"


def unit_starts(scene: Scene) -> list[int]:
    """Where each sentence begins; without marks, each breath."""
    found = [0]
    for at in range(1, len(scene.pieces)):
        before = scene.pieces[at - 1]
        if before.ends or (not scene.marked and before.cue != scene.pieces[at].cue):
            found.append(at)
    return [*found, len(scene.pieces)]


def _unit(units: list[int], place: int) -> int:
    """The number of the unit that a place is in."""
    low, high = 0, len(units) - 1
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if units[middle] <= place else (low, middle)
    return low


def _quoted(scene: Scene, signs: Signs, units: list[int], begin: int, end: int) -> Iterator[Statement]:
    """The claim follows "I said", or stands before it: "A dab of oil, I said"."""
    last = len(scene.pieces)
    if end >= last:
        return
    unit = _unit(units, begin)
    claim_end = min(units[unit + 1], end + _LONGEST)
    if claim_end - end < 1:
        claim_end = min(units[min(unit + 2, len(units) - 1)], end + _LONGEST)
    inner = _turn(scene, signs, end + 1, claim_end)
    if inner is not None:
        yield Statement("quote", begin, (end, inner), (inner, _closing(scene, units, inner)), True)
    for number in range(_unit(units, claim_end - 1) + 1, min(_unit(units, claim_end - 1) + 1 + _UNITS, len(units) - 1)):
        if units[number + 1] - begin > _AHEAD + _LONGEST:
            break
        yield Statement("quote", begin, (end, claim_end), (units[number], units[number + 1]), True)
        inside = _turn(scene, signs, units[number] + 1, units[number + 1])
        if inside is not None:
            yield Statement("quote", begin, (end, claim_end), (inside, units[number + 1]), True)
    if begin > units[unit] + 1 and claim_end - end <= 1:
        for number in range(unit + 1, min(unit + 1 + _UNITS, len(units) - 1)):
            yield Statement("quote", units[unit], (units[unit], begin), (units[number], units[number + 1]), True)


def _done_then(scene: Scene, units: list[int], begin: int) -> Iterator[Statement]:
    """What was done in an earlier session, and the next sentences: "back in the spring I drilled the fourteenth"."""
    unit = _unit(units, begin)
    for first in range(unit, min(unit + 2, len(units) - 1)):
        claim = (max(units[first], begin if first == unit else 0), units[first + 1])
        if not any(scene.pieces[at].text in _SPEAKER for at in range(*claim)):
            continue
        for number in range(first + 1, min(first + 2 + _UNITS, len(units) - 1)):
            if units[number + 1] - begin <= _AHEAD + _LONGEST:
                yield Statement("session", begin, claim, (units[number], units[number + 1]), False)


def _turn(scene: Scene, signs: Signs, begin: int, end: int) -> int | None:
    """Where what holds begins inside a sentence: "I said left hinge / it's the right"."""
    for at in range(begin, end - 1):
        here = [span for name in ("holds", "amend") if (span := signs.within(name, at, at + 1))]
        text = scene.pieces[at].text
        if here and text not in (
            "is",
            "was",
            "are",
            "at",
            "to",
            "as",
            "be",
            "do",
            "have",
            "has",
            "a",
            "say",
            "want",
            "use",
            "'s",
        ):
            if scene.pieces[at - 1].text == "to":
                continue  # "I told you in the last film to make that hole bigger"
            return at
    return None


def _closing(scene: Scene, units: list[int], place: int) -> int:
    return min(units[_unit(units, place) + 1], place + _LONGEST, len(scene.pieces))


def _remarked(scene: Scene, units: list[int], anchor: str, begin: int, end: int) -> Iterator[Statement]:
    """What was said before a remark, or long before of the same, and what is said behind or around it."""
    last = len(scene.pieces)
    unit = _unit(units, begin)
    answers: list[tuple[int, int]] = []
    if end < units[unit + 1]:
        answers.append((end, min(units[unit + 1], end + _LONGEST)))
    if begin - units[unit] >= 2:
        answers.append((units[unit], begin))
    behind = _unit(units, end - 1) + 1
    answers += [(units[n], units[n + 1]) for n in range(behind, min(behind + _UNITS, len(units) - 1))]
    for answer in answers:
        if answer[1] - answer[0] < 1 or answer[1] > last:
            continue
        start = min(begin, answer[0])
        claims = [(max(units[n], start - BACK), min(units[n + 1], start)) for n in (unit, unit - 1, unit - 2) if n >= 0]
        claims += _contradicted(scene, units, answer, start)
        for claim in dict.fromkeys(claims):
            if 0 <= claim[0] < claim[1] <= start:
                yield Statement(anchor, begin, claim, answer, False)


def _contradicted(scene: Scene, units: list[int], answer: tuple[int, int], before: int) -> list[tuple[int, int]]:
    """Earlier sentences that share words with an answer and have the counterpart of one of its words."""
    words = scene.content(range(*answer))
    found: dict[int, int] = {}
    for word in words:
        for place in scene.places_of(word, before):
            number = _unit(units, place)
            found[number] = found.get(number, 0) + 1
    for number in found:
        span = (units[number], min(units[number + 1], before))
        found[number] += _COUNTERPART * bool(swapped(scene, span, answer))
    ranked = sorted(found, key=lambda number: (-found[number], -number))[:3]
    return [(units[n], min(units[n + 1], before)) for n in ranked]


def swapped(scene: Scene, claim: tuple[int, int], answer: tuple[int, int]) -> list[str]:
    """Words of the answer that are the counterpart of a word of the claim: left and right, red and black."""
    said, meant = scene.counterparts_in(*claim), scene.counterparts_in(*answer)
    fresh = {word for word in meant - said if len(word) > 1}
    return sorted(word for word in fresh if said & scene.words.swaps[word])
