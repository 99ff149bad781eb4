"""Findings after rulings: judged anew where figures changed, and taken off the list where a person settled them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from extract.record import Finding, Measure, Record
from extract.rulings.fate import Fate, fates_of
from extract.rulings.items import items_of
from extract.rulings.model import Item, OnItem
from extract.rulings.placing import place
from extract.rulings.proofed import Decided, Unplaced
from extract.trade import Trade, UnknownTradeError, load_trade

_PAIRED_BY_WORDS = frozenset({"conversion", "arithmetic"})
"""Kinds of finding that rest on the few words between two figures."""
_CHANGED = "the figures that it was about have changed since"


@dataclass(frozen=True, slots=True)
class Judged:
    """The findings of a record as ruled."""

    open: tuple[Finding, ...]
    settled: tuple[Decided, ...]
    placed: tuple[OnItem, ...]
    unplaced: tuple[Unplaced, ...]
    moved: frozenset[str]
    """Ids of rulings that were placed by words and time."""
    items: dict[str, Item]
    """Every finding there is or was, by id."""


def judge(
    machine: Record, ruled: Record, fates: dict[str, Fate], rulings: Iterable[OnItem], trade: Trade | None
) -> Judged:
    """What is open and what is settled in `ruled`, the record with a person's figures.

    A finding is settled where the person let it stand or struck it while its figures were those it has now, where every
    figure that it names was let stand, or where the person was told that a unit does not fit, and meant it. `fates` are
    those of the measures, `rulings` those on findings.
    """
    found = _findings(machine, ruled, trade)
    now = ruled.model_copy(update={"findings": found})
    items = {**_findings_of(machine), **_findings_of(now)}
    placement = place(rulings, items)
    verdicts = fates_of(placement.placed)
    open_, settled, changed = [], [], set()
    for finding in found:
        item, verdict = items[finding.id], verdicts.get(finding.id)
        if verdict is not None and _figures_of(placement.placed, verdict) in ((), item.figures):
            settled.append(Decided(item, verdict.ruling))
            continue
        if verdict is not None:
            changed.add(verdict.ruling)
        stood = [fates[one].ruling for one in finding.measures if one in fates and _settles(fates[one], finding)]
        if finding.measures and len(stood) == len(finding.measures):
            settled.append(Decided(item, stood[-1]))
        else:
            open_.append(finding)
    unplaced = [Unplaced(one, _CHANGED) for one in placement.placed if one.id in changed]
    return Judged(
        tuple(open_), tuple(settled), placement.placed, (*placement.unplaced, *unplaced), placement.moved, items
    )


def _settles(fate: Fate, finding: Finding) -> bool:
    return fate.verdict == "stet" or (fate.overrule and finding.kind == "dimension")


def _findings(machine: Record, ruled: Record, trade: Trade | None) -> tuple[Finding, ...]:
    """The machine's findings, or those of the checks run again where a figure is another one now."""
    if _bare(ruled) == _bare(machine):
        return machine.findings
    from extract.checks import run_checks  # heavy, and needed only where a figure changed

    added = {one.id for one in ruled.measures if one.ruling is not None and one.ruling.verdict == "add"}
    return tuple(
        one
        for one in run_checks(ruled, trade or trade_of(machine))
        # No words are known around an added figure, so nothing can be read from them.
        if one.kind not in _PAIRED_BY_WORDS or not added.intersection(one.measures)
    )


def _bare(record: Record) -> list[Measure]:
    return [one.model_copy(update={"ruling": None}) for one in record.measures]


def trade_of(record: Record) -> Trade:
    """The trade that a record names; the general one where it names none that is known."""
    try:
        return load_trade(record.session.trade or "general")
    except UnknownTradeError:
        return load_trade("general")


def _findings_of(record: Record) -> dict[str, Item]:
    return {name: item for name, item in items_of(record).items() if item.kind == "finding"}


def _figures_of(rulings: Iterable[OnItem], verdict: Fate) -> tuple[str, ...]:
    return next(one.on.figures for one in rulings if one.id == verdict.ruling)
