"""What is said beside figures and steps."""

from __future__ import annotations

from spacy.tokens import Doc

from extract.clauses import Bench
from extract.remarks.doubts import find_doubts
from extract.remarks.follow_ups import find_follow_ups
from extract.remarks.hazards import find_hazards
from extract.remarks.reading import Reading
from extract.remarks.said_cautions import find_said_cautions
from extract.remarks.things_used import find_things_used
from extract.spans import Remarks
from extract.trade import Trade

__all__ = ["find_remarks"]


def find_remarks(doc: Doc, trade: Trade) -> Remarks:
    """Cautions, materials, tools, follow-ups and doubts, each in order of speaking. Linear in the number of tokens."""
    reading = Reading.of(Bench(doc, trade))
    cautions = (*find_said_cautions(reading), *find_hazards(reading, trade.hazards))
    tools, materials = find_things_used(reading)
    return Remarks(
        cautions=tuple(sorted(cautions, key=lambda one: one.start)),
        materials=materials,
        tools=tools,
        follow_ups=find_follow_ups(reading),
        doubts=find_doubts(reading),
    )
