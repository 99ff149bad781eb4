"""Ids of items that rulings make: added ones, and the steps that a step is split into."""

from __future__ import annotations

import hashlib

PREFIXES: dict[str, str] = {
    "measure": "m", "correction": "c", "finding": "f", "step": "s", "follow_up": "l", "doubt": "d",
    "tool": "t", "material": "k",
}  # fmt: skip
"""First letter of the ids of each kind of item."""


def new_id(kind: str, ruling_id: str, number: int = 0) -> str:
    """The id of an item that a ruling makes: an added one, or the `number`th step of a split."""
    digest = hashlib.sha256(f"{kind}\x1f{ruling_id}\x1f{number}".encode()).hexdigest()[:12]
    return f"{PREFIXES[kind]}-by-{digest}"


def is_made(item_id: str) -> bool:
    """Whether a ruling made the item, which then stands and falls with that ruling."""
    return item_id[1:5] == "-by-"
