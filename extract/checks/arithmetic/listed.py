"""A sum or difference of figures said one after the other, whatever else is said between them.

Takes "the head tube's 110, the headset's 12, the stem's 40 and 20 of spacers, add that lot up, you get 192" (182) and
"between the stones 4.86, the staff 4.83, the difference is 0.3" (0.03); refuses "9 mm and 7 mm, there's a gap of 12".
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations

from extract.checks.agreement import agreement
from extract.checks.arithmetic.counting import count_at
from extract.checks.arithmetic.work import in_unit
from extract.checks.figure import Figure, parse_figure
from extract.checks.finding import Suspicion, figure_text, like, symbol_of, with_unit
from extract.checks.linear import SAME
from extract.checks.said_in import holding, words_for
from extract.checks.talk import Said, Talk

SOURCE = "arithmetic, with the rounding of NIST SP 811 (2008) B.7"
_TABLE = "listed"
_MOST = 6
"""Terms that anyone adds aloud."""
_APART, _FEW = 4, 8
"""Cues, and words of another sentence, between a term and the next figure of the list."""
_LAST, _SHORT = 4, 3
"""Terms of which any two or three may have been worked with."""
_LINK, _BEHIND = 12, 4
_NEAR, _LOOSE = Fraction(8, 5), Fraction(5, 4)
"""How far out a total may be and still be meant as one; less where only "so that's" says that there is one."""
_WIDE = Fraction(4)
_POWERS = tuple(Fraction(10) ** power for power in (-3, -2, -1, 1, 2, 3))
_DECIMALS = re.compile(r"\d+(?:\.\d+)?")


@dataclass(frozen=True, slots=True)
class _Term:
    """What is added: a figure, or a bare number between two of them."""

    value: Fraction
    text: str
    said: Said | None = None
    each: bool = False
    """Said of each of two, or of so many that the words don't tell."""


def find_listed(talk: Talk, judged: frozenset[int]) -> Iterator[Suspicion]:
    """Each result that no reading of the list before it gives. `judged` are the places of results already settled."""
    for one in talk.said:
        if one.place not in judged and (found := listed_before(talk, one)) is not None:
            yield found


def listed_before(talk: Talk, one: Said) -> Suspicion | None:
    """The doubt of one result, where it is said to be one."""
    if len(one.figures) > 1 or one.measure.unit is None or not one.before:
        return None
    way = _way(one)
    terms = _terms(talk, one) if way else []
    if way is None or len(terms) < 2 or (way == "result" and _is_in_another_unit(terms[-1], one)):
        return None
    return _judge(one, terms, way) if way != "result" or _is_joined(terms[-1]) else None


def _is_joined(last: _Term) -> bool:
    """ "84 of rope, and on the barrel call that 8": where only "so" follows, the last term is one more of a list."""
    said = last.said
    return said is None or bool(words_for(_TABLE, "joining") & {*said.before}) or len(said.before) <= _SHORT


def calls_opposites(talk: Talk, one: Said) -> bool:
    """The difference of a gain and a loss, which no plainer sum may judge."""
    return _way(one) == "difference" and _are_opposite(_terms(talk, one))


def _is_in_another_unit(last: _Term, one: Said) -> bool:
    """ "14 inches, so call it 350 mm": said again rather than worked out."""
    return last.said is not None and one.measure.unit_said and last.said.measure.unit != one.measure.unit


def comes_of_last(talk: Talk, one: Said) -> bool:
    """The one or two figures before give it some other way: their sum or difference, or twice the last."""
    terms = _terms(talk, one)[-2:]
    values = [term.value for term in terms]
    abreast = holding(_TABLE, "abreast").search(" ".join(one.before)) is not None
    ways = [values[-1] * 2] if values and not abreast else []
    if len(values) > 1:
        ways += [sum(values, Fraction(0)), abs(values[0] - values[1])]
    return any(way == one.figure.value for way in ways)


def _way(one: Said) -> str | None:
    """Whether the words just before a figure, or right behind it, call it a sum, a difference or only a result."""
    before, behind = " ".join(one.before[-_LINK:]), " ".join(one.after[:_BEHIND])
    if {*one.before[-3:]} & words_for(_TABLE, "other"):
        return None
    result = holding(_TABLE, "result").search(" ".join(one.before[-5:])) is not None
    for way in ("difference", "sum"):
        if holding(_TABLE, f"{way}_behind").search(behind) and result:
            return way
        if holding(_TABLE, way).search(before) and (result or way == "difference"):
            return way
    return "result" if result and holding(_TABLE, "plainly").search(" ".join(one.before[-3:])) else None


def _terms(talk: Talk, one: Said) -> list[_Term]:
    """The figures before it, in order, back to the first that can't belong to the list."""
    found: list[_Term] = []
    later = one
    while len(found) < _MOST:
        earlier = talk.by_place.get(later.place - 1)
        found[:0] = _bare(earlier, later)
        if earlier is None or later.measure.cue - earlier.measure.cue > _APART or len(earlier.figures) > 1:
            break
        value = _value(earlier, one)
        if value is None or _is_other_kind(earlier, found) or _is_new_matter(later):
            break
        if found and "so" in later.before:
            break
        each = bool({*earlier.after[:2]} & words_for(_TABLE, "each"))
        found.insert(0, _Term(value, earlier.measure.display, earlier, each))
        later = earlier
    first = next((at for at, term in enumerate(found) if term.said is not None), len(found))
    return found[first:]


def _value(earlier: Said, one: Said) -> Fraction | None:
    """A term in the unit of the result; one whose unit was not said is taken to be in it."""
    measure = earlier.measure
    if measure.unit is None or measure.difference or measure.same_as:
        return None
    if measure.kind == one.measure.kind:
        return in_unit(earlier, one.measure.unit)
    bare = not measure.unit_said or not one.measure.unit_said
    return earlier.figure.value if bare else None


def _is_other_kind(earlier: Said, found: list[_Term]) -> bool:
    """Grams before a list of lengths, or figures whose units nobody said in more than one unit."""
    units = {term.said.measure.unit for term in found if term.said is not None}
    if units and not earlier.measure.unit_said and earlier.measure.unit not in units:
        return True
    kinds = {term.said.measure.kind for term in found if term.said is not None}
    return bool(kinds) and earlier.measure.kind not in kinds and earlier.measure.unit_said


def _is_new_matter(later: Said) -> bool:
    """Another sentence, and more words than a list has between its terms."""
    return _FEW < len(later.before) != len(later.clause)


def _bare(earlier: Said | None, later: Said) -> list[_Term]:
    """Numbers without a unit between two figures: "I want 4 of clear air, add those"."""
    words = later.before if later.near or earlier is None else earlier.after
    found = []
    for at in range(len(words) - 2):
        count = count_at(words, at)[0]
        if words[at + 1] == "of" and (count or _DECIMALS.fullmatch(words[at])):
            value = Fraction(count) if count else parse_figure(words[at]).value
            found.append(_Term(value, figure_text(value)))
    return found


def _judge(one: Said, terms: list[_Term], way: str) -> Suspicion | None:
    opposite = _are_opposite(terms)
    if any(_comes_out(exact, one, terms) for exact in _others(terms, way, opposite)):
        return None
    said = one.figure
    meant = [
        (max(said.value / value, value / said.value), value, used, wording if scale == 1 else _bare_text(wording))
        for exact, used, wording in _readings(terms, way, opposite)
        for scale in _scales(terms)
        if _is_near(said.value, value := exact * scale, way)
    ]
    if not meant:
        return None
    _, exact, used, wording = min(meant, key=lambda reading: reading[0])
    symbol, verb = _symbol(one, used), "is" if " less " in wording else "make"
    figures = tuple(term.said.measure for term in used if term.said is not None)
    message = (
        f"{wording} {verb} {with_unit(like(exact, said), symbol)}, not {with_unit(like(said.value, said), symbol)}"
    )
    return Suspicion("arithmetic", "stop", (*figures, one.measure), message, SOURCE)


def _bare_text(wording: str) -> str:
    """Without the units that nobody said: "1.482 less 1.367"."""
    return re.sub(r"(?<=\d)\N{NO-BREAK SPACE}[^\s,]+", "", wording)


def _symbol(one: Said, used: tuple[_Term, ...]) -> str:
    """That of the result; where its unit was not said, that of the terms."""
    first = next((term.said.measure for term in used if term.said is not None), one.measure)
    return symbol_of(one.measure if one.measure.unit_said or not first.unit_said else first)


def _scales(terms: list[_Term]) -> tuple[Fraction, ...]:
    """Terms without a unit may be in metres where the result is in millimetres."""
    unsaid = all(term.said is None or not term.said.measure.unit_said for term in terms)
    return (Fraction(1), Fraction(1000), Fraction(1, 1000)) if unsaid else (Fraction(1),)


def _comes_out(exact: Fraction, one: Said, terms: list[_Term]) -> bool:
    hedged = one.measure.hedged or any(term.said is not None and term.said.measure.hedged for term in terms)
    said = one.figure
    figures = (Figure(exact * scale, said.step, said.fraction, hedged) for scale in _scales(terms))
    return any(agreement(figure, said, SAME) != "disagrees" for figure in figures)


def _is_near(said: Fraction, exact: Fraction, way: str) -> bool:
    if exact <= 0 or said <= 0:
        return False
    times = max(said / exact, exact / said)
    if way == "difference":
        return times < _WIDE or said / exact in _POWERS
    return times < (_NEAR if way == "sum" else _LOOSE)


def _readings(terms: list[_Term], way: str, opposite: bool) -> Iterator[tuple[Fraction, tuple[_Term, ...], str]]:
    """What the words call for: the whole list first, then its later parts."""
    if way == "difference":
        first, second = terms[-2:]
        if opposite:
            yield first.value + second.value, (first, second), f"{first.text} one way and {second.text} the other"
        else:
            yield abs(first.value - second.value), (first, second), f"{first.text} less {second.text}"
        return
    for start in range(len(terms) - 1):
        used = tuple(terms[start:])
        value = sum(((2 if term.each else 1) * term.value for term in used), Fraction(0))
        texts = [f"twice {term.text}" if term.each else term.text for term in used]
        yield value, used, f"{', '.join(texts[:-1])} and {texts[-1]}"


def _others(terms: list[_Term], way: str, opposite: bool) -> Iterator[Fraction]:
    """What else may have been worked out of the last terms: each of these clears a result."""
    values = [term.value for term in terms[-_LAST:]]
    for size in range(2, len(terms) + 1):
        used = terms[-size:]
        total = sum((term.value for term in used), Fraction(0))
        each = sum((term.value for term in used if term.each), Fraction(0))
        yield from (total, total / 2, total + each)
    for first, second in combinations(values, 2):
        yield from (first + second, *(() if opposite else (abs(first - second), abs(first - second) / 2)))
    for first, second, third in () if opposite else combinations(values, 3):
        yield from (first + second + third, abs(first - second - third), abs(first + second - third))
    if way == "result":
        yield from (value * times for value in values for times in (1, 2, Fraction(1, 2)))


def _are_opposite(terms: list[_Term]) -> bool:
    """ "It gains 14 one way and loses 6 the other": such a difference is a sum."""
    if len(terms) < 2 or terms[-1].said is None or terms[-2].said is None:
        return False
    here, there = ({*term.said.before[-5:], *term.said.after[:2]} for term in terms[-2:] if term.said is not None)
    one, other = words_for(_TABLE, "gains"), words_for(_TABLE, "loses")
    return bool((here & one and there & other) or (here & other and there & one))
