"""The names of tools and materials in a shop on disk."""

from __future__ import annotations

from capture.shop import Shop
from publish.kit.names import Names
from publish.kit.rulings.log import KitLog
from publish.kit.rulings.model import Ruling
from publish.rulings.given import Given, given_in


def log_of(shop: Shop) -> Given[Ruling]:
    """The shop's log of rulings on tools and materials. Raises `RulingLogError` where it can't be read."""
    return given_in(KitLog.of(shop))


def names_of_shop(shop: Shop) -> Names:
    """The names that a person gave. Raises `RulingLogError` where the log can't be read."""
    return Names.by(log_of(shop).rulings)
