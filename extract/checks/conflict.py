"""Two figures for the same attribute of the same thing in the same phase, with no correction between.

Takes "we're after 7/64 at the twelfth" and later "remember, we're shooting for 9/64 at the twelfth"; "the left valve's
at 52, the right's at 31" and "it was 42, it's 36 now" pass. It is strict about what counts as the same thing: a false
alarm costs more than a miss. Source: consistency within one narration.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from fractions import Fraction

from extract.checks.agreement import agreement
from extract.checks.finding import Suspicion
from extract.checks.linear import conversion
from extract.checks.talk import Said, Talk
from extract.checks.vocabulary import check_words

SOURCE = "the narration itself: one thing, two figures"
_NEAR = 8
"""Words about a figure that may tell its thing from a neighbour."""
_ARTICLES = (("a",), ("an",), ("another",), ("each",))
_FAR = 3
"""Two sizes further apart than this are of two things, whatever they are called."""
_PHASES = ("as_found", "target", "as_left")
"""A figure of another instrument or a rule of thumb conflicts with nothing."""


def find_conflicts(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that differs from the last one said of the same thing."""
    last: dict[tuple[str | None, ...], Said] = {}
    series: defaultdict[tuple[str | None, ...], int] = defaultdict(int)
    for one in talk.said:
        key = _thing(one)
        if key is None:
            continue
        earlier = last.get(key)
        last[key] = one
        series[key] += 1
        if earlier is not None and series[key] == 2 and _differ(earlier, one) and _same_thing(earlier, one):
            yield _suspect(earlier, one)


def _thing(one: Said) -> tuple[str | None, ...] | None:
    measure = one.measure
    if not measure.attribute or not measure.item or measure.phase not in _PHASES or measure.unit is None:
        return None
    if measure.difference or measure.limit or measure.tolerance or measure.same_as or len(one.figures) > 1:
        return None
    return measure.attribute, measure.item, measure.where, measure.phase, measure.kind


def _differ(first: Said, second: Said) -> bool:
    convert = conversion(first.measure.unit or "", second.measure.unit or "")
    if convert is None or first.figure.value == 0:
        return False
    ratio = abs(second.figure.value / (convert(first.figure.value) or 1))
    return Fraction(1, _FAR) <= ratio <= _FAR and agreement(first.figure, second.figure, convert) == "disagrees"


def _same_thing(first: Said, second: Said) -> bool:
    """No word near one of the figures tells it from the other, and nothing was done between."""
    if first.measure.cue == second.measure.cue or _names_its_thing(first) or _names_its_thing(second):
        return False
    words = [{*one.before[-_NEAR:], *one.after[:_NEAR]} for one in (first, second)]
    vocabulary = check_words()
    for row in vocabulary.telling_apart:
        here, there = (row & near for near in words)
        if here and there and not here & there:
            return False
    if any(bool(row & words[0]) != bool(row & words[1]) for row in vocabulary.alone):
        return False
    return not vocabulary.changing & {*second.before[-_NEAR:], *second.after[:3]}


def _names_its_thing(one: Said) -> bool:
    """ "a 10k resistor", "a quarter inch driver": another size is another thing."""
    item = (one.measure.item or "").split()
    return bool(item) and bool(one.after) and one.after[0].removesuffix("s") in item and one.before[-1:] in _ARTICLES


def _suspect(first: Said, second: Said) -> Suspicion:
    one, other = first.measure, second.measure
    where = f" ({other.where})" if other.where else ""
    what = f"the {other.attribute} of {other.item}{where}"
    phase = {"as_found": "as found", "target": "aimed at", "as_left": "as left"}[other.phase]
    message = f"{what}, {phase}, is {one.display} at first and {other.display} here, with no correction between"
    return Suspicion("conflict", "stop", (one, other), message, SOURCE)
