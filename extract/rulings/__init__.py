"""A person's rulings on what the machine made, and the record that comes of them.

    log = RulingLog(session.rulings_file)
    proofed = apply(record, log.read().rulings)      # record: what the machine made, from record.json
    log.append(amend(proofed, "m-3f9c21ab", {"figure": "7/64 in"}, Hand("Ada"), because="heard_wrong"))

`apply` is cheap: call it again after each ruling. `giving` makes rulings and checks them; `log` keeps them.
"""

from extract.rulings.applying import apply
from extract.rulings.errors import FigureError, RulingError, RulingLogError, UnitKindError
from extract.rulings.force import in_force, may_redo, may_undo
from extract.rulings.giving import (
    Hand,
    Wanted,
    add,
    amend,
    merge,
    note,
    pass_for_press,
    redo,
    reorder,
    split,
    stet,
    strike,
    undo,
)
from extract.rulings.log import Aside, LogRead, RulingLog
from extract.rulings.model import Changes, Elsewhere, Figure, Item, Kind, Portion, Retract, Ruling
from extract.rulings.proofed import RANKS, Decided, Open, Proofed, Rank, Unplaced

__all__ = [
    "RANKS",
    "Aside",
    "Changes",
    "Decided",
    "Elsewhere",
    "Figure",
    "FigureError",
    "Hand",
    "Item",
    "Kind",
    "LogRead",
    "Open",
    "Portion",
    "Proofed",
    "Rank",
    "Retract",
    "Ruling",
    "RulingError",
    "RulingLog",
    "RulingLogError",
    "UnitKindError",
    "Unplaced",
    "Wanted",
    "add",
    "amend",
    "apply",
    "in_force",
    "may_redo",
    "may_undo",
    "merge",
    "note",
    "pass_for_press",
    "redo",
    "reorder",
    "split",
    "stet",
    "strike",
    "undo",
]
