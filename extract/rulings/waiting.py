"""What still waits for a person: the worst first."""

from __future__ import annotations

from collections.abc import Iterator

from extract.record import Finding, Measure, Record, Step
from extract.rulings.items import items_of
from extract.rulings.model import Item
from extract.rulings.proofed import RANKS, Open, Rank
from extract.rulings.shown import former_in, shows

_VAGUE = frozenset({"", "it", "that", "this", "them", "one", "thing", "stuff"})


def waiting(record: Record, listened: frozenset[str] = frozenset()) -> tuple[Open, ...]:
    """Everything open in a record from which what is settled was taken.

    `listened` are the measures of near ties that a person has settled already, whose finding is in the record no more.
    """
    found = list(_all(record, items_of(record), listened))
    found.sort(key=lambda one: (RANKS.index(one.rank), one.item.start))
    return tuple(found)


def _all(record: Record, items: dict[str, Item], listened: frozenset[str]) -> Iterator[Open]:
    asked = set(listened)
    for finding in record.findings:
        yield Open(items[finding.id], _rank(finding), finding.message)
        asked.update(finding.measures)
    for measure in record.measures:
        if _is_near_tie(measure) and measure.id not in asked:
            yield Open(items[measure.id], "near_tie", f"“{measure.quote}” may have been another figure: listen again")
    for correction in record.corrections:
        if correction.ruling is None:
            message = f"“{correction.withdraws.text}” is taken back; right is {correction.replacement}"
            rank: Rank = "correction" if correction.scope == "this_session" else "retraction"
            yield Open(items[correction.id], rank, message)
    for doubt in record.doubts:
        if doubt.ruling is None or doubt.ruling.verdict == "add":
            yield Open(items[doubt.id], "doubt", doubt.text)
    measures = {one.id: one for one in record.measures}
    for step in record.steps:
        if _is_unsure(step):
            yield Open(items[step.id], "step", f"“{step.text}”: say what is worked on, or strike it")
        for measure in (measures[name] for name in step.measures if name in measures):
            former = former_in(step.text, measure)
            if former is not None and not shows(step.text, measure.display):
                message = f"“{step.text}” shows {former}, which is {measure.display} by now"
                yield Open(items[step.id], "step", message)


def _rank(finding: Finding) -> Rank:
    if finding.severity == "stop":
        return "stop"
    return "near_tie" if finding.kind == "misheard" else "look"


def _is_near_tie(measure: Measure) -> bool:
    let_stand = measure.ruling is not None and measure.ruling.verdict == "stet"
    return measure.stands and not let_stand and measure.heard is not None and measure.heard.near_tie


def _is_unsure(step: Step) -> bool:
    """A step that names nothing that is worked on."""
    return step.ruling is None and step.object.casefold() in _VAGUE
