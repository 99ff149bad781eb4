"""What two sessions of one instrument say of the same thing.

Takes an action left at 2 mm and found at 3 mm the next time, which is worth a look since wood moves and strings are
changed; two figures left on the same date must be settled. Source: the shop's own records.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from extract.checks.agreement import agreement
from extract.checks.linear import conversion
from extract.checks.talk import figures_of
from extract.ids import Mint
from extract.record import Finding, Measure, Phase, Record

SOURCE = "shop's own records: another session of the same instrument"


def find_between(record: Record, others: Iterable[Record]) -> tuple[Finding, ...]:
    """What other sessions of the record's subject contradict, one finding a figure; none where no subject is named.

    An earlier session's figure as left is held against this one's as found, and figures as left on one date against
    each other. Quadratic in the measures of one thing only.
    """
    mint = Mint()
    found: dict[str, Finding] = {}
    for other in others:
        if not _is_same_subject(record, other):
            continue
        for measure, earlier, severe in _differing(record, other):
            when = other.session.date or "another day"
            phase = "left" if severe else "found"
            then, now = f"was left at {earlier.display} on {when}", f"is {phase} at {measure.display} here"
            found.setdefault(
                measure.id,
                Finding(
                    id=mint.mint("f", "sessions", measure.quote, earlier.quote),
                    kind="conflict",
                    severity="stop" if severe else "look",
                    cue=measure.cue,
                    cues=(measure.cue,),
                    start=measure.start,
                    quote=measure.quote,
                    measures=(measure.id,),
                    message=f"{_name(measure)} {then} and {now}",
                    source=SOURCE,
                ),
            )
    return tuple(found.values())


def _is_same_subject(record: Record, other: Record) -> bool:
    one, two = (" ".join((each.session.subject or "").lower().split()) for each in (record, other))
    return bool(one) and one == two


def _differing(record: Record, other: Record) -> Iterator[tuple[Measure, Measure, bool]]:
    """Pairs that disagree, and whether both were left on one date. Dates are ISO 8601, so they compare as text."""
    here, there = record.session.date or "", other.session.date or ""
    if not here or not there or there > here:
        return
    same_day = here == there
    for measure in _of_phase(record, "as_left" if same_day else "as_found"):
        alike = [one for one in _of_phase(other, "as_left") if _key(one) == _key(measure)]
        if alike and not any(_agree(one, measure) for one in alike):
            yield measure, alike[-1], same_day


def _of_phase(record: Record, phase: Phase) -> Iterator[Measure]:
    for one in record.measures:
        if one.stands and one.phase == phase and one.attribute and one.item and one.unit and not one.difference:
            yield one


def _key(one: Measure) -> tuple[str | None, ...]:
    return one.attribute, one.item, one.where, one.kind


def _agree(first: Measure, second: Measure) -> bool:
    convert = conversion(first.unit or "", second.unit or "")
    if convert is None:
        return True
    return any(agreement(a, b, convert) != "disagrees" for a in figures_of(first) for b in figures_of(second))


def _name(one: Measure) -> str:
    return f"the {one.attribute} of the {one.item}" + (f" ({one.where})" if one.where else "")
