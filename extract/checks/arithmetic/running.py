"""A sum of which one term was said long before.

Takes "the old stuffing weighs 300 g ... plus some new hair, 200 g, so all up 600" and "the spine is 38 mm ... the
finished spine is 41 mm, so the repair has put on 5 mm"; refuses both where more than one figure may be meant.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.checks.agreement import agreement
from extract.checks.figure import Figure
from extract.checks.finding import Suspicion, like, symbol_of, with_unit
from extract.checks.linear import SAME, conversion
from extract.checks.talk import Said, Talk
from extract.checks.vocabulary import Phrase, check_words, holds

_LINK, _NAMED = 7, 9
_NOUN = 4
"""Letters from which on a shared word is taken for a name."""


def find_running(talk: Talk) -> Iterator[tuple[tuple[Said, Said, Said], Fraction, str]]:
    """The terms, the exact result and the wording of each such sum, right or wrong."""
    words = check_words()
    for third in talk.said:
        second = talk.previous(third)
        if second is None or len(third.figures) > 1 or len(second.figures) > 1:
            continue
        if second.measure.kind != third.measure.kind or third.measure.unit is None:
            continue
        link = third.before[-_LINK:]
        if words.adding & {*second.before[-_NAMED:]} and holds(link, words.total) and "of" not in link:
            first = _only(talk, second, third, named=False)
            if first is not None:
                yield (first, second, third), _in(first, third) + _in(second, third), "plus"
        elif _ends_in(link, words.gaining):
            first = _only(talk, second, third, named=True)
            if first is not None:
                yield (first, second, third), abs(_in(first, third) - _in(second, third)), "to"


def _ends_in(words: tuple[str, ...], phrases: frozenset[Phrase]) -> bool:
    """One of the phrases stands right before the figure, or an "about" between."""
    for end in range(len(words), max(0, len(words) - 3), -1):
        if any(words[max(0, end - length) : end] in phrases for length in (1, 2, 3)):
            return True
    return False


def _only(talk: Talk, second: Said, third: Said, named: bool) -> Said | None:
    """The one earlier figure that may be the other term: of the same kind and, where `named`, of the same thing."""
    earlier = [
        one
        for one in talk.said
        if one.place < second.place and one.measure.kind == third.measure.kind and len(one.figures) == 1
    ]
    if named:
        earlier = [one for one in earlier if _names(one) & _names(second)]
    values = {_in(one, third) for one in earlier if not one.measure.difference and not one.measure.same_as}
    return earlier[-1] if len(values) == 1 else None


def _names(one: Said) -> frozenset[str]:
    words = (*one.before[-_NOUN:], *one.after[:1])
    return frozenset(word.removesuffix("'s") for word in words if len(word) >= _NOUN and word not in _EMPTY)


_EMPTY = frozenset(
    {"that's", "this", "that", "which", "with", "from", "about", "just", "have", "reads", "across", "wide"}
)


def _in(one: Said, goal: Said) -> Fraction:
    convert = conversion(one.measure.unit or "", goal.measure.unit or "")
    return convert(one.figure.value) if convert is not None else one.figure.value


def judge_running(terms: tuple[Said, Said, Said], exact: Fraction, link: str, source: str) -> Suspicion | None:
    """The suspicion where the result said isn't the one worked out."""
    first, second, third = terms
    hedged = any(one.measure.hedged for one in terms)
    worked = Figure(exact, third.figure.step, third.figure.fraction, hedged)
    if exact == 0 or agreement(worked, third.figure, SAME) != "disagrees":
        return None
    right = with_unit(like(exact, third.figure), symbol_of(third.measure))
    message = f"{first.measure.display} {link} {second.measure.display} is {right}, not {third.measure.display}"
    return Suspicion("arithmetic", "stop", tuple(one.measure for one in terms), message, source)
