"""Sums said aloud that don't come out.

Takes "42 down to 36, so 8 thou" and "425 times 35 milliamps, that's about 12 watts"; "16 mm, three gaps, so 48" passes.
Source: arithmetic; a result may be rounded as NIST SP 811 (2008) B.7 allows.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.checks.agreement import agreement
from extract.checks.arithmetic.running import find_running, judge_running
from extract.checks.arithmetic.sums import SUMS, Sum, terms_of
from extract.checks.arithmetic.terms import Terms
from extract.checks.arithmetic.window import window_before
from extract.checks.figure import Figure
from extract.checks.finding import Suspicion, like, symbol_of, with_unit
from extract.checks.linear import SAME
from extract.checks.talk import Talk

__all__ = ["SUMS", "find_sums"]

SOURCE = "arithmetic, with the rounding of NIST SP 811 (2008) B.7"


def find_sums(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that is said as the result of a sum and is not; the first sum of the table that fits decides."""
    worked: set[int] = set()
    for said, exact, link in find_running(talk):
        suspicion = judge_running(said, exact, link, SOURCE)
        worked.add(said[-1].place)
        if suspicion is not None:
            yield suspicion
    for one in talk.said:
        window = window_before(talk, one)
        if window is None or one.place in worked:
            continue
        for rule in SUMS:
            matched = rule.pattern.search(window.text)
            terms = terms_of(window, matched) if matched is not None else None
            if terms is None or (found := _judge(rule, terms)) == "no sum":
                continue
            if isinstance(found, Suspicion):
                yield found
            break


def _judge(rule: Sum, terms: Terms) -> Suspicion | str:
    """The suspicion, "right" where the sum comes out, "no sum" where the units don't go together."""
    exact = rule.work(terms)
    if exact is None:
        return "no sum"
    result = terms.result
    hedged = any(one.measure.hedged for one in (*terms.operands, result))
    worked = Figure(exact, result.figure.step, result.figure.fraction, hedged)
    if agreement(worked, result.figure, SAME) != "disagrees":
        return "right"
    right = with_unit(like(exact, result.figure), symbol_of(result.measure))
    message = f"{rule.wording(terms)} is {right}, not {result.measure.display}"
    measures = (*(one.measure for one in terms.operands), result.measure)
    return Suspicion("arithmetic", "stop", measures, message, SOURCE)
