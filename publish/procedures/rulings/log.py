"""The shop's log of rulings on procedures: procedures.json, only ever added to."""

from __future__ import annotations

from collections.abc import Iterable

from capture.shop import Shop
from extract.rulings.line_log import LineLog
from publish.procedures.rulings.model import FORMAT, OnProcedure, Ruling, Undo, ruling_adapter
from publish.rulings.taking_back import not_taken_back


class ProcedureLog(LineLog[Ruling]):
    """The rulings of a shop on its procedures."""

    adapter = ruling_adapter
    format = FORMAT
    lock_name = ".procedures.lock"
    home = "the shop's folder"

    @classmethod
    def of(cls, shop: Shop) -> ProcedureLog:
        """The log of a shop."""
        return cls(shop.procedures_file)


def in_force(rulings: Iterable[Ruling]) -> tuple[OnProcedure, ...]:
    """The rulings that hold, in the order in which they were given."""
    return tuple(one for one in not_taken_back(rulings) if not isinstance(one, Undo))
