"""What tools and materials are called in a shop: as a person rules, in kit.json, else as each session has them.

    record = as_called(record, names_of_shop(shop))     # as every page, card and search has it

The record keeps with each thing what was said for it and at which cues. `kit_of(sessions)` sets what all sessions name
beside one another, for a person to rule on by `publish.kit.rulings.giving`.
"""

from publish.kit.names import Called, Names
from publish.kit.naming import as_called, said_in_record
from publish.kit.of_shop import log_of, names_of_shop
from publish.kit.same import same_thing
from publish.kit.things import Kit, Spoken, Thing, kit_of

__all__ = [
    "Called",
    "Kit",
    "Names",
    "Spoken",
    "Thing",
    "as_called",
    "kit_of",
    "log_of",
    "names_of_shop",
    "said_in_record",
    "same_thing",
]
