"""A shop's other sessions of the same work, and what they say against a record."""

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

    found = find_between(record, fellows(session, shop))
    if not found:
        return record
    order = sorted((*record.findings, *found), key=lambda one: one.start)
    return record.model_copy(update={"findings": tuple(order)})


def fellows(session: Session, shop: Shop) -> Iterator[Record]:
    """What stands of each other session of the same work; none where the work is not named."""
    from publish.library.works import folded
    from publish.standing import Standing

    work = folded(session.settings.subject)
    standing = Standing(shop)
    for other in shop.sessions():
        if not work or other.folder == session.folder or not other.record_file.is_file():
            continue
        try:
            if folded(other.settings.subject) == work:
                yield standing.of(other).proofed.record
        except SpokeshaveError:
            continue
