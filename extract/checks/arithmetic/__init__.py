"""Sums said aloud that don't come out.

Takes "42 down to 36, so 8 thou" and "425 times 35 milliamps, that's about 12 watts"; "16 mm, three gaps, so 48" passes.
Source: arithmetic; a result may be rounded as NIST SP 811 (2008) B.7 allows.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.checks.agreement import agreement
from extract.checks.arithmetic.carried import is_carried
from extract.checks.arithmetic.listed import calls_opposites, comes_of_last, find_listed, listed_before
from extract.checks.arithmetic.loose import LOOSE
from extract.checks.arithmetic.otherwise import comes_out_otherwise
from extract.checks.arithmetic.pattern import Sum, terms_of
from extract.checks.arithmetic.running import find_running, judge_running
from extract.checks.arithmetic.sums import SUMS
from extract.checks.arithmetic.terms import Terms
from extract.checks.arithmetic.window import Window, window_before
from extract.checks.figure import Figure
from extract.checks.finding import Suspicion, like, symbol_of, with_unit
from extract.checks.linear import SAME, conversion
from extract.checks.talk import Said, Talk

__all__ = ["SUMS", "find_sums"]

SOURCE = "arithmetic, with the rounding of NIST SP 811 (2008) B.7"


def find_sums(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that is said as the result of a sum and is not; the first sum of the table that fits decides."""
    return (found for found in _doubted(talk) if not comes_out_otherwise(talk, found))


def _doubted(talk: Talk) -> Iterator[Suspicion]:
    worked: set[int] = set()
    for said, exact, link in find_running(talk):
        suspicion = judge_running(said, exact, link, SOURCE)
        worked.add(said[-1].place)
        if suspicion is not None:
            yield suspicion
    for one in talk.said:
        window = window_before(talk, one)
        if window is None or one.place in worked or _is_said_again(talk, one) or calls_opposites(talk, one):
            continue
        found = [(rule, judged) for rule in SUMS if (judged := _try(rule, window)) != "no sum"]
        if found:
            worked.add(one.place)
        for rule, judged in found[:1]:
            cleared = _is_cleared(found) or (rule in LOOSE and comes_of_last(talk, one))
            if isinstance(judged, Suspicion) and not cleared:
                yield judged if rule.carrier == "itself" else _longer(listed_before(talk, one), judged)
    yield from find_listed(talk, frozenset(worked))


def _longer(listed: Suspicion | None, judged: Suspicion) -> Suspicion:
    """The sum of a whole list rather than that of its last two."""
    return listed if listed is not None and len(listed.measures) > len(judged.measures) else judged


def _is_cleared(found: list[tuple[Sum, Suspicion | str]]) -> bool:
    """A sum that comes out clears the figure, but one that is only hinted at none that is said in its own words."""
    plain = found[0][0].carrier == "itself"
    return any(judged == "right" and (not plain or rule.carrier == "itself") for rule, judged in found)


def _is_said_again(talk: Talk, one: Said) -> bool:
    """ "Sixteen inches, that's 406 mm": the figure before in another unit, and no result."""
    before = talk.previous(one)
    if before is None or before.measure.unit == one.measure.unit:
        return False
    convert = conversion(before.measure.unit or "", one.measure.unit or "")
    return convert is not None and agreement(before.figure, one.figure, convert) != "disagrees"


def _try(rule: Sum, window: Window) -> Suspicion | str:
    matched = rule.pattern.search(window.text)
    terms = terms_of(window, matched) if matched is not None else None
    if matched is None or terms is None:
        return "no sum"
    judged = _judge(rule, terms)
    return judged if judged == "right" or is_carried(window, int(matched["c"]), rule.carrier) else "no sum"


def _is_rounding(terms: Terms, exact: Fraction) -> bool:
    """Three digits each of figures that were rounded before they were worked with: "1.38 less 0.824 is 0.551"."""
    figures = [one.figure for one in (*terms.operands, terms.result)]
    if any(one.fraction or one.digits < _DIGITS for one in figures):
        return False
    slack = sum((one.half for one in figures), Fraction(0))
    return abs(exact - terms.result.figure.value) <= slack


_DIGITS = 3
_BOUNDS = {
    "more": 1,
    "better": 1,
    "over": 1,
    "above": 1,
    "least": 1,
    "less": -1,
    "under": -1,
    "nearly": -1,
    "almost": -1,
}


def _is_bound(result: Said, exact: Fraction) -> bool:
    """ "So that's more than half a millimetre": right where the exact result is on that side."""
    side = next((_BOUNDS[word] for word in result.before[-2:] if word in _BOUNDS), 0)
    return side * exact > side * result.figure.value


def _judge(rule: Sum, terms: Terms) -> Suspicion | str:
    """The suspicion, "right" where the sum comes out, "no sum" where the units don't go together."""
    exact = rule.work(terms)
    if exact is None:
        return "no sum"
    result = terms.result
    if _is_bound(result, exact):
        return "right"
    hedged = any(one.measure.hedged for one in (*terms.operands, result))
    worked = Figure(exact, result.figure.step, result.figure.fraction, hedged)
    if agreement(worked, result.figure, SAME) != "disagrees" or _is_rounding(terms, exact):
        return "right"
    right = with_unit(like(exact, result.figure), symbol_of(result.measure))
    message = f"{rule.wording(terms)} is {right}, not {result.measure.display}"
    measures = (*(one.measure for one in terms.operands), result.measure)
    return Suspicion("arithmetic", "stop", measures, message, SOURCE)
