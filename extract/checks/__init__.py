"""Rules that a record must keep before it is published.

Each rule is a pure function of a record's talk, in a module of its own; `RULES` is the table of them.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from extract.checks.against import find_far_set
from extract.checks.arithmetic import find_sums
from extract.checks.called import find_miscalled
from extract.checks.common import find_uncommon
from extract.checks.contrast import find_contrasts
from extract.checks.conversion import find_conversions
from extract.checks.direction import find_reversed
from extract.checks.elsewhere import find_shifted
from extract.checks.finding import Suspicion
from extract.checks.foreign import find_foreign
from extract.checks.implausible import find_implausible
from extract.checks.impossible import IMPOSSIBLE
from extract.checks.instruments import find_unreadable
from extract.checks.known_sizes import find_wrong_sizes
from extract.checks.misheard import find_misheard
from extract.checks.missing_units import find_missing_units
from extract.checks.parallel import find_unlike
from extract.checks.plates import find_unlike_powers
from extract.checks.scale import find_out_of_scale
from extract.checks.talk import Talk
from extract.checks.terms import find_wrong_terms
from extract.checks.twice import find_told_twice
from extract.checks.units import find_wrong_kinds
from extract.ids import Mint
from extract.record import Finding, Record
from extract.trade import Trade

__all__ = ["RULES", "run_checks"]

_LOOSE_MARK = re.compile(r"\s+([.,;:?!])")
_CLOSED_UP = re.compile("\N{NO-BREAK SPACE}°(?![CF])")
"""The sign of an angle stands close to its figure: NIST SP 811 (2008) section 7.2."""

Rule = Callable[[Talk], Iterable[Suspicion]]

RULES: tuple[tuple[str, Rule], ...] = (
    ("unit missing", find_missing_units),
    ("dimension", find_wrong_kinds),
    ("contrast", find_contrasts),
    ("instruments", find_unreadable),
    ("powers", find_unlike_powers),
    ("parallel", find_unlike),
    ("terms", find_wrong_terms),
    ("foreign unit", find_foreign),
    ("called", find_miscalled),
    ("conversion", find_conversions),
    ("known sizes", find_wrong_sizes),
    ("arithmetic", find_sums),
    *IMPOSSIBLE,
    ("implausible", find_implausible),
    ("uncommon", find_uncommon),
    ("scale", find_out_of_scale),
    ("shifted", find_shifted),
    ("against", find_far_set),
    ("direction", find_reversed),
    ("told twice", find_told_twice),
    ("misheard", find_misheard),
)
"""In order: where two rules doubt the same figure, the graver doubt speaks; of equals the first one."""


def run_checks(record: Record, trade: Trade, rules: tuple[tuple[str, Rule], ...] = RULES) -> tuple[Finding, ...]:
    """What a person must settle or look at, in order of speaking. Linear in the number of measures."""
    talk = Talk(record, trade)
    order = {one.id: at for at, one in enumerate(record.measures)}
    by_figure: dict[str, Suspicion] = {}
    for _, rule in rules:
        for one in rule(talk):
            first = by_figure.setdefault(one.measures[-1].id, one)
            if first.severity == "look" and one.severity == "stop":
                by_figure[one.measures[-1].id] = one
    kept = list(by_figure.values())
    kept.sort(key=lambda one: order[one.measures[-1].id])
    mint = Mint()
    return tuple(_finding(one, mint) for one in kept)


def _finding(one: Suspicion, mint: Mint) -> Finding:
    last = one.measures[-1]
    return Finding(
        id=mint.mint("f", one.kind, *(measure.quote for measure in one.measures)),
        kind=one.kind,
        severity=one.severity,
        cue=last.cue,
        cues=tuple(sorted({measure.cue for measure in one.measures})),
        start=last.start,
        quote=_quote(one),
        measures=tuple(measure.id for measure in one.measures),
        message=_CLOSED_UP.sub("°", one.message),
        source=one.source,
    )


def _quote(one: Suspicion) -> str:
    """The figure as said; with the one before it and the words between where those are near."""
    last = one.measures[-1]
    if len(one.measures) > 1 and last.before and last.cue - one.measures[-2].cue <= 1 and len(last.before) < 80:
        return _LOOSE_MARK.sub(r"\1", f"{one.measures[-2].quote} {last.before} {last.quote}")
    return last.quote
