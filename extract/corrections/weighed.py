"""Figures taken back, judged by all that speaks for it and against it.

Takes "it pulls 12, excuse the glasses, 17 ounces", "that ten minutes was nonsense, it wants three" and "a correction
before we go on: the shell is 13 inches", where 14 was said before; refuses "12 at this end, 17 at that".
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from extract.corrections.evidence import Reasons, weigh
from extract.corrections.far_pairs import far_pairs, far_reasons, window
from extract.corrections.figure_pairs import breaks
from extract.corrections.near_pairs import near_pairs, near_reasons
from extract.corrections.openings import opens
from extract.corrections.said_before import first_said
from extract.corrections.scene import Draft, Scene, alike
from extract.corrections.signs import Signs, signs_of
from extract.corrections.statement_reasons import statement_reasons
from extract.corrections.statements import Statement, statements, unit_starts
from extract.record import Scope
from extract.spans import Measured

_SESSION = 26
"""Words before a quoted figure among which an earlier session is named."""
_QUOTED = 12
_SIZE = (Fraction(2, 3), Fraction(3, 2))
_LARGE = 100
"""A bare number from here on may borrow the unit of one of its size: smaller ones are often counts."""
_LONG = 5
"""Words between two figures above which the remark begins at its first sign."""
_OPENING = ("strong", "confess", "discard", "amend", "deny", "reread", "pause", "quote")
_FAR_OPENING = ("quote", "recall", "confess", "discard", "amend", "reread")


def find_weighed_slips(scene: Scene) -> Iterator[Draft]:
    """Each figure that follows another so closely that it may be said in its place."""
    signs = signs_of(scene)
    read = ((near_reasons(scene, signs, *pair), pair) for pair in near_pairs(scene, signs))
    scored = [(weigh("near", reasons), pair) for reasons, pair in read if not _plainly_another(reasons)]
    sure = {pair for score, pair in scored if score > 0}
    chained = {(first, last) for first, middle in sure for begun, last in sure if begun == middle}
    for wrong, right in _best(one for one in scored if one[1] not in chained):
        yield _near(scene, signs, wrong, right)


def _plainly_another(reasons: Reasons) -> bool:
    """The second figure is said of another thing, and nothing between them takes the first back."""
    return "another_subject" in reasons and not any(name in reasons for name in _OPENING if name != "pause")


def find_weighed_returns(scene: Scene) -> Iterator[Draft]:
    """Each figure said long before, with a remark that takes it back."""
    signs = signs_of(scene)
    scored = ((weigh("far", far_reasons(scene, signs, *pair)), pair) for pair in far_pairs(scene, signs))
    for wrong, right in _best(scored):
        yield _far(scene, signs, wrong, right)


def find_weighed_statements(scene: Scene) -> Iterator[Draft]:
    """Each statement without a figure that a remark takes back, the surest first."""
    signs, units = signs_of(scene), unit_starts(scene)
    scored = [
        (weigh("statement", statement_reasons(scene, signs, one)), one) for one in statements(scene, signs, units)
    ]
    taken: list[tuple[int, int]] = []
    for score, one in sorted(scored, key=lambda pair: -pair[0]):
        begin, end = min(one.begin, one.answer[0]), max(one.answer[1], one.begin + 1)
        if score > 0 and not any(begin < behind and before < end for before, behind in taken):
            taken.append((begin, end))
            yield _statement(signs, one, begin, end)


def _statement(signs: Signs, one: Statement, begin: int, end: int) -> Draft:
    older = one.anchor == "session" or (
        one.quoted and signs.last("session", max(0, begin - _SESSION), one.answer[0]) is not None
    )
    scope: Scope = "earlier_session" if older else "this_session"
    return Draft(begin, end, scope, one.claim, one.answer, said_again=older or one.quoted)


def _best(scored: Iterable[tuple[float, tuple[int, int]]]) -> Iterator[tuple[int, int]]:
    """Pairs that weigh enough, the heaviest first; no figure is taken back or put in place twice."""
    gone: set[int] = set()
    kept: set[int] = set()
    for score, (wrong, right) in sorted(scored, key=lambda one: -one[0]):
        if score > 0 and wrong not in gone and right not in kept:
            gone.add(wrong)
            kept.add(right)
            yield wrong, right


def _near(scene: Scene, signs: Signs, wrong: int, right: int) -> Draft:
    quote = signs.last("quote", max(0, wrong - _QUOTED), right)
    if quote is not None and breaks(scene, quote[0], right) > 3:
        quote = None
    begin = wrong + 1
    if quote is not None and quote[0] < wrong:
        begin = quote[0]
    elif right - wrong > _LONG:
        found = [one[0] for name in _OPENING if (one := signs.within(name, wrong + 1, right))]
        begin = min(found, default=begin)
    behind = next((span for name in ("strong", "amend") if (span := signs.within(name, right + 1, right + 2))), None)
    until = behind[1] if behind and opens(scene, behind[1]) else right + 1
    recalled = quote is not None or signs.last("recall", max(0, wrong - _QUOTED), wrong + 1) is not None
    return _draft(scene, signs, (begin, until), wrong, right, recalled)


def _far(scene: Scene, signs: Signs, wrong: int, right: int) -> Draft:
    begin, end = window(scene, right)
    found = [one[0] for name in _FAR_OPENING if (one := signs.last(name, begin, right))]
    start = min(found, default=right)
    until = max(right, wrong if wrong < end else 0) + 1
    return _draft(scene, signs, (min(start, right), until), wrong, right, recalled=True)


def _draft(scene: Scene, signs: Signs, span: tuple[int, int], wrong: int, right: int, recalled: bool) -> Draft:
    pieces = scene.pieces
    first, second = pieces[wrong].measured, pieces[right].measured
    begin, end = window(scene, right)
    # What is asked again is gone both times: "it's 14 mm. 14 mm? 40 mm".
    places = [at for at in range(wrong, right) if at == wrong or _repeats(scene, at, wrong)] if first else []
    earlier: list[int] = []
    if first and recalled:
        earlier = [at for at in first_said(scene, wrong, wrong) if at != right]
        places += [at for at in range(begin, end) if at not in (wrong, right) and _repeats(scene, at, wrong)]
    gone = tuple(dict.fromkeys(scene.measured(at) for at in (*earlier, *places)))
    where = earlier[0] if earlier else wrong
    named = signs.last("session", max(0, wrong - _SESSION), right + _QUOTED // 2)
    quoted = signs.last("quote", max(0, wrong - _QUOTED), right) is not None
    older = quoted and not earlier and named is not None and wrong >= begin
    number, value, unit = pieces[right].number, None, None
    if second is None and first is not None and number is not None:
        value, unit = number.value, first.quantity.unit
    if first is None and second is None and number is not None and (near := _magnitude(scene, right)) is not None:
        value, unit = number.value, near.quantity.unit
    return Draft(
        span[0], span[1], "earlier_session" if older else "this_session", (where, where + 1), (right, right + 1),
        gone, second, said_again=older, unit=unit, value=value,
    )  # fmt: skip


def _magnitude(scene: Scene, right: int) -> Measured | None:
    """A measure said soon after a bare number and of its size: "set at 230, no, 210. We get 240 volts here"."""
    number = scene.pieces[right].number
    for at in range(right + 1, min(right + _QUOTED, len(scene.pieces))):
        one = scene.pieces[at].measured
        if one is not None and number is not None:
            same = number.value * _SIZE[0] <= one.quantity.value <= number.value * _SIZE[1]
            return one if same and number.value >= _LARGE else None
    return None


def _repeats(scene: Scene, at: int, wrong: int) -> bool:
    """The wrong figure is said again at a place."""
    one: Measured | None = scene.pieces[at].measured
    first = scene.measured(wrong)
    return one is not None and alike(one, first) and one.quantity.number.value == first.quantity.number.value
