"""Follow-ups and doubts as a person has them: reworded, struck, settled, added."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from extract.record import Former, Remark, Ruled
from extract.rulings.fate import Fate
from extract.rulings.items import remark_id
from extract.rulings.model import Add, Kind
from extract.rulings.order import put_in


@dataclass(frozen=True, slots=True)
class Sorted:
    """Remarks after rulings."""

    kept: tuple[Remark, ...]
    struck: dict[str, str]
    """Ids of rulings by the ids of remarks that they struck."""
    settled: dict[str, str]
    """The same for doubts that were looked up."""


def ruled_remarks(kind: Kind, remarks: Iterable[Remark], added: Iterable[Add], fates: dict[str, Fate]) -> Sorted:
    """Remarks in order of speaking. A doubt that is let stand was looked up, and is a doubt no more."""
    kept: list[Remark] = []
    struck: dict[str, str] = {}
    settled: dict[str, str] = {}
    named = [one.model_copy(update={"id": one.id or remark_id(kind, one.text)}) for one in remarks]
    for one in put_in(named, [_added(add) for add in added]):
        fate = fates.get(one.id)
        if fate is None:
            kept.append(one)
        elif fate.verdict == "strike":
            struck[one.id] = fate.ruling
        elif fate.verdict == "stet" and kind == "doubt":
            settled[one.id] = fate.ruling
        else:
            kept.append(_ruled(one, fate))
    return Sorted(tuple(kept), struck, settled)


def _ruled(remark: Remark, fate: Fate) -> Remark:
    was = Former(text=remark.text) if fate.verdict == "amend" else None
    ruled = Ruled(verdict=fate.verdict, ruling=fate.ruling, because=fate.because, was=was)
    return remark.model_copy(update={"text": fate.to.text or remark.text, "ruling": ruled})


def _added(add: Add) -> Remark:
    ruled = Ruled(verdict="add", ruling=add.id)
    return Remark(id=add.on.id, cue=add.on.cue, start=add.on.start, text=add.to.text or add.on.words, ruling=ruled)
