"""What a shop's other sessions of the same instrument say against a record."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from capture.errors import SpokeshaveError

if TYPE_CHECKING:
    from capture.shop import Session, Shop
    from extract.record import Record


def against_fellows(record: Record, session: Session, shop: Shop) -> Record:
    """The record with what its fellows contradict among its findings; one that can't be read is passed over here.

    Publishing tells of a record that can't be read.
    """
    from extract.checks.sessions import find_between

    found = find_between(record, _others(session, shop))
    if not found:
        return record
    order = sorted((*record.findings, *found), key=lambda one: one.start)
    return record.model_copy(update={"findings": tuple(order)})


def _others(session: Session, shop: Shop) -> Iterator[Record]:
    from publish.standing import Standing

    standing = Standing(shop)
    for other in shop.sessions():
        if other.folder == session.folder or not other.record_file.is_file():
            continue
        try:
            yield standing.of(other).proofed.record
        except SpokeshaveError:
            continue
