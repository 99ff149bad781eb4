"""From a machine's record and a person's rulings to the record as the person has it.

The rulings are placed on the items of the record, then carried out kind by kind; whatever rests on a figure that a
person changed is worked out anew.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from extract.record import Record
from extract.rulings.carrying import carry_out
from extract.rulings.fate import fates_of
from extract.rulings.findings import judge
from extract.rulings.force import in_force
from extract.rulings.items import digest_of, items_of
from extract.rulings.model import Item, Note, OnItem, Pass, Ruling, Stet
from extract.rulings.placing import Placement, place
from extract.rulings.proofed import Decided, Proofed, Unplaced
from extract.rulings.waiting import waiting
from extract.trade import Trade


def apply(record: Record, rulings: Iterable[Ruling], trade: Trade | None = None) -> Proofed:
    """The record as a person has it after all rulings of its log, in the order in which they were given.

    Pure: the same record and rulings give the same result. `trade` is the one to judge amended figures by; without it
    the record's own. A ruling that fits nothing raises nothing: it comes back in `unplaced`.
    """
    force = in_force(rulings)
    on_items = [one for one in force if not isinstance(one, Pass)]
    placement = _placed(record, [one for one in on_items if one.on.kind != "finding"])
    fates = fates_of(placement.placed)
    carried = carry_out(record, placement.placed, fates)
    judged = judge(record, carried.record, fates, [one for one in on_items if one.on.kind == "finding"], trade)
    ruled = carried.record.model_copy(update={"findings": judged.open})
    # A step that a ruling made and another struck stands in neither record; its ruling knows it.
    made = {one.on.id: one.on for one in placement.placed if one.id in carried.struck.values()}
    items = {**made, **items_of(ruled), **items_of(record), **judged.items}
    failed = tuple(Unplaced(one, carried.failed[one.id]) for one in placement.placed if one.id in carried.failed)
    unplaced = (*placement.unplaced, *failed, *judged.unplaced)
    lost = {one.ruling.id for one in unplaced}
    moved = (placement.moved | judged.moved) - lost
    placed = [one for one in (*placement.placed, *judged.placed) if one.id not in lost]
    return Proofed(
        record=ruled,
        machine=record,
        in_force=force,
        placed={one.id: one.on.id for one in placed},
        open=waiting(ruled, _listened(record, judged.settled)),
        settled=(*judged.settled, *_decided(carried.settled, items)),
        struck=_decided(carried.struck, items),
        notes=tuple(one for one in placed if isinstance(one, Note)),
        unplaced=unplaced,
        kept=len(placed) - len(moved),
        moved=len(moved),
        passed=_is_passed(force, record, ruled),
        items=items,
    )


def _placed(record: Record, rulings: list[OnItem]) -> Placement:
    """Rulings on their items; one that let a figure stand which is read otherwise now has no place any more."""
    placement = place(rulings, items_of(record))
    shown = {one.id: one.display for one in record.measures}
    reread = {
        one.id: Unplaced(one, f"it was let stand as {one.on.figures[0]}, and is read as {shown[one.on.id]} now")
        for one in placement.placed
        if isinstance(one, Stet) and one.on.figures and shown.get(one.on.id, one.on.figures[0]) != one.on.figures[0]
    }
    still = tuple(one for one in placement.placed if one.id not in reread)
    return Placement(still, (*placement.unplaced, *reread.values()), placement.moved - set(reread))


def _listened(machine: Record, settled: Iterable[Decided]) -> frozenset[str]:
    """Ids of the measures whose near tie a person has settled."""
    answered = {one.item.id for one in settled}
    ties = (one for one in machine.findings if one.kind == "misheard" and one.id in answered)
    return frozenset(name for one in ties for name in one.measures)


def _decided(rulings: Mapping[str, str], items: Mapping[str, Item]) -> tuple[Decided, ...]:
    return tuple(Decided(items[name], ruling) for name, ruling in rulings.items() if name in items)


def _is_passed(force: tuple[OnItem | Pass, ...], machine: Record, ruled: Record) -> bool:
    digest = digest_of(machine)
    given = any(isinstance(one, Pass) and one.record == digest for one in force)
    return given and not any(one.severity == "stop" for one in ruled.findings)
