"""What the sessions of a shop take back of earlier ones, and a person's ruling on it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from capture.errors import SpokeshaveError
from extract.retractions import Traced, retract
from extract.rulings import Hand, Retract, RulingError, RulingLog
from extract.rulings import undo as take_back
from publish.standing import Standing

if TYPE_CHECKING:
    from capture.shop import Session, Shop


@dataclass(frozen=True, slots=True)
class Found:
    """One retraction."""

    session: Session
    title: str
    traced: Traced


def found_in(shop: Shop) -> tuple[Found, ...]:
    """Every retraction of a shop, the oldest session first; sessions that can't be read are passed over."""
    standing = Standing(shop)
    found: list[Found] = []
    for session in shop.sessions():
        try:
            stands = standing.of(session)
        except SpokeshaveError:
            continue
        title = stands.proofed.record.session.title
        found.extend(Found(session, title, one) for one in stands.retractions)
    return tuple(found)


def rule(shop: Shop, found: Found, take: int | None, *, undo: bool = False) -> None:
    """Keep what a person says: the candidate counted from 1, none where that is null, or the last ruling undone.

    Raises `RulingError` where there is no such candidate or nothing to undo.
    """
    proofed = Standing(shop).of(found.session).proofed
    hand = Hand(shop.settings.author)
    log = RulingLog(found.session.rulings_file)
    if not undo:
        log.append(retract(proofed, found.traced, None if take is None else take - 1, hand))
        return
    given = [
        one
        for one in proofed.in_force
        if isinstance(one, Retract) and proofed.placed.get(one.id) == found.traced.correction.id
    ]
    if not given:
        raise RulingError("nobody has said yet which statement is meant", "say so with --take or --none")
    log.append(take_back(proofed, given[-1].id, hand))
