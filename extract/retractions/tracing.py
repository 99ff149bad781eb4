"""Which earlier statement each retraction of a session means: as a person said, else as the machine proposes.

The machine proposes only what is certain: one candidate alone with the same figure, of a thing that the talk names, on
the same instrument, on which no person has ruled; and the talk must say which figure holds instead.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from extract.record import Correction, Record
from extract.retractions.candidates import Candidate, candidates
from extract.retractions.claim import claim_of
from extract.retractions.sitting import Sitting
from extract.rulings.items import items_of
from extract.rulings.matching import find_places
from extract.rulings.model import Item, Retract
from extract.rulings.proofed import Proofed

State = Literal["confirmed", "proposed", "none", "open", "lost"]
"""A person named the statement; the machine is sure of it; a person said that it is none of them; nobody knows yet; or
the statement that a person named is not found any more."""


@dataclass(frozen=True, slots=True)
class Traced:
    """A retraction and the statement that it means."""

    session: str
    """Folder of the session in which it was said."""
    correction: Correction
    candidates: tuple[Candidate, ...]
    state: State
    chosen: Candidate | None = None
    """The statement; null where none is known."""
    ruling: Retract | None = None
    """The ruling that decided it."""


def trace(here: Sitting, proofed: Proofed, earlier: Sequence[tuple[Sitting, Proofed]]) -> tuple[Traced, ...]:
    """Every retraction of a session. `earlier` are those before it as their own rulings have them, oldest first."""
    before = [(sitting, ruled.record) for sitting, ruled in earlier]
    rulings = {proofed.placed.get(one.id): one for one in proofed.in_force if isinstance(one, Retract)}
    traced = []
    for one in proofed.record.corrections:
        if one.scope != "earlier_session":
            continue
        found = candidates(claim_of(proofed.record, one), here, before)
        ruling = rulings.get(one.id)
        if ruling is None:
            sure = _sure(one, found, {sitting.slug: ruled for sitting, ruled in earlier})
            accepted = one.ruling is not None and one.ruling.verdict == "stet"
            state: State = "open" if sure is None else "confirmed" if accepted else "proposed"
            traced.append(Traced(here.slug, one, found, state, sure))
        elif ruling.statement is None:
            traced.append(Traced(here.slug, one, found, "none", None, ruling))
        else:
            chosen = _again(ruling, found, before)
            traced.append(Traced(here.slug, one, found, "confirmed" if chosen else "lost", chosen, ruling))
    return tuple(traced)


def _sure(correction: Correction, found: tuple[Candidate, ...], proofs: dict[str, Proofed]) -> Candidate | None:
    exact = [one for one in found if one.exact]
    if len(exact) != 1 or correction.value is None:
        return None
    ruled = set(proofs[exact[0].session].placed.values())
    touched = any(item.id in ruled for item in (exact[0].item, *exact[0].also))
    return None if touched else exact[0]


def _again(ruling: Retract, found: tuple[Candidate, ...], before: Sequence[tuple[Sitting, Record]]) -> Candidate | None:
    """The statement that a person named, found again where the earlier session was heard anew."""
    statement = ruling.statement
    if statement is None:
        return None
    there = next(((sitting, record) for sitting, record in before if sitting.slug == statement.session), None)
    if there is None:
        return None
    items = items_of(there[1])
    item = find_places([statement.item], items).of(statement.item)
    if item is None:
        return None
    known = next((one for one in found if one.session == statement.session and item in (one.item, *one.also)), None)
    return known or _bare(there[0], there[1], item)


def _bare(there: Sitting, record: Record, item: Item) -> Candidate:
    """A statement that a person named though nothing speaks for it any more."""
    facts = there.record.session
    ends = {one.id: one.end for one in record.measures} | {one.id: one.end for one in record.steps}
    told = " ".join((*item.figures, f"“{item.words}”"))
    return Candidate(
        there.slug, facts.title, facts.date, item, told, ends.get(item.id, item.start), (), 0, (), exact=False
    )
