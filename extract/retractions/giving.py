"""Giving the ruling that says which statement a retraction means."""

from __future__ import annotations

from extract.retractions.tracing import Traced
from extract.rulings.errors import RulingError
from extract.rulings.giving import Hand
from extract.rulings.model import Elsewhere, Retract
from extract.rulings.proofed import Proofed


def retract(proofed: Proofed, traced: Traced, candidate: int | None, hand: Hand) -> Retract:
    """Say which candidate a retraction means, counted from 0; None for none of them.

    Raises `RulingError` where there is no such candidate.
    """
    item = proofed.item(traced.correction.id)
    if candidate is None:
        return Retract(on=item, statement=None, id=hand.ruling_id, by=hand.by, at=hand.at)
    if not 0 <= candidate < len(traced.candidates):
        number = len(traced.candidates)
        there = f"there are {number}" if number else "no earlier session says anything like it"
        raise RulingError(f"there is no candidate {candidate + 1}", f"{there}; name one of those, or none")
    chosen = traced.candidates[candidate]
    statement = Elsewhere(session=chosen.session, item=chosen.item)
    return Retract(on=item, statement=statement, id=hand.ruling_id, by=hand.by, at=hand.at)
