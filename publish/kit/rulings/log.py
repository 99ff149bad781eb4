"""The shop's log of rulings on tools and materials: kit.json, only ever added to."""

from __future__ import annotations

from collections.abc import Iterable

from capture.shop import Shop
from extract.rulings.line_log import LineLog
from publish.kit.rulings.model import FORMAT, OnKit, Ruling, Undo, ruling_adapter
from publish.rulings.taking_back import not_taken_back


class KitLog(LineLog[Ruling]):
    """The rulings of a shop on its tools and materials."""

    adapter = ruling_adapter
    format = FORMAT
    lock_name = ".kit.lock"
    home = "the shop's folder"

    @classmethod
    def of(cls, shop: Shop) -> KitLog:
        """The log of a shop."""
        return cls(shop.kit_file)


def in_force(rulings: Iterable[Ruling]) -> tuple[OnKit, ...]:
    """The rulings that hold, in the order in which they were given."""
    return tuple(one for one in not_taken_back(rulings) if not isinstance(one, Undo))
