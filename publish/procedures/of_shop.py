"""The procedures of a shop on disk."""

from __future__ import annotations

from collections.abc import Sequence

from capture.shop import Shop
from publish.procedures.address_book import read_book
from publish.procedures.gathering import procedures_of
from publish.procedures.procedure import Procedures
from publish.procedures.rulings.log import ProcedureLog
from publish.procedures.rulings.model import Ruling
from publish.procedures.work import SessionWork
from publish.rulings.given import Given, given_in


def log_of(shop: Shop) -> Given[Ruling]:
    """The shop's log of rulings on procedures. Raises `RulingLogError` where it can't be read."""
    return given_in(ProcedureLog.of(shop))


def procedures_of_shop(shop: Shop, works: Sequence[SessionWork]) -> tuple[Procedures, tuple[str, ...]]:
    """The procedures under the shop's log, and a line for each ruling, or line of the log, without effect.

    Raises `RulingLogError` where the log can't be read, and `ShopError` where the book of addresses can't.
    """
    log = log_of(shop)
    procedures = procedures_of(works, log.rulings, read_book(shop.procedure_addresses_file))
    return procedures, (*procedures.lost, *log.told)
