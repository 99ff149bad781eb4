"""What was taken back, what is left for later and what is to be looked up: the list of a sheet of its own.

What an amended figure made an erratum of is ruled on where the figure is, and is left out.
"""

from __future__ import annotations

from desk.proof.items import Items
from desk.proof.views import ItemView
from desk.proof.work import Work
from extract.record import Correction

_KINDS = frozenset({"correction", "follow_up", "doubt"})


def errata(work: Work, items: Items) -> tuple[ItemView, ...]:
    """All of them, by kind and in order of speaking, those that were struck behind them, to have them back."""
    record = work.proofed.record
    kept = (
        *(items.correction(one) for one in listed_errata(work)),
        *(items.remark("follow_up", one) for one in record.follow_ups),
        *(items.remark("doubt", one) for one in record.doubts),
    )
    gone = [one.item for one in work.proofed.struck if one.item.kind in _KINDS]
    return (*kept, *(items.struck(one).model_copy(update={"group": "struck"}) for one in gone))


def listed_errata(work: Work) -> list[Correction]:
    """The corrections that are ruled on by themselves."""
    return [one for one in work.proofed.record.corrections if one.source == "narration" or _is_added(one)]


def _is_added(one: Correction) -> bool:
    return one.ruling is not None and one.ruling.verdict in ("add", "stet") and one.source == "proof"
