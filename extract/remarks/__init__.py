"""What is said beside figures and steps.

Plain rules and weighed signs find together what is a caution, a doubt or left for later.
"""

from __future__ import annotations

from spacy.tokens import Doc

from extract.clauses import Bench
from extract.remarks.hazards import find_hazards
from extract.remarks.reading import Reading
from extract.remarks.things_used import find_things_used
from extract.remarks.weighed import find_weighed
from extract.spans import Remarks
from extract.trade import Trade

__all__ = ["find_remarks"]


def find_remarks(doc: Doc, trade: Trade) -> Remarks:
    """Cautions, materials, tools, follow-ups and doubts, each in order of speaking. Linear in the number of tokens."""
    reading = Reading.of(Bench(doc, trade))
    weighed = find_weighed(reading)
    cautions = (*weighed.cautions, *find_hazards(reading, trade.hazards))
    tools, materials = find_things_used(reading)
    return Remarks(
        cautions=tuple(sorted(cautions, key=lambda one: one.start)),
        materials=materials,
        tools=tools,
        follow_ups=weighed.follow_ups,
        doubts=weighed.doubts,
    )
