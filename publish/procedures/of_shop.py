"""The procedures of a shop on disk."""

from __future__ import annotations

from collections.abc import Sequence

from capture.shop import Shop
from publish.procedures.gathering import procedures_of
from publish.procedures.procedure import Procedures
from publish.procedures.rulings.log import ProcedureLog
from publish.procedures.work import SessionWork


def procedures_of_shop(shop: Shop, works: Sequence[SessionWork]) -> tuple[Procedures, tuple[str, ...]]:
    """The procedures under the shop's log, and a line for each ruling, or line of the log, without effect.

    Raises `RulingLogError` where the log can't be read.
    """
    read = ProcedureLog.of(shop).read()
    procedures = procedures_of(works, read.rulings)
    aside = (f"line {one.line} of procedures.json is {one.why}; it stays there, and does nothing" for one in read.aside)
    return procedures, (*procedures.lost, *aside)
