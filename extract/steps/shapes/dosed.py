"""A dose of material, or the next tool, tells the work: "a smear of the proper grease", "then pipe clamps".

Refuses "grease everywhere" (no dose), "the proper grease" (only named).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, kind_of
from extract.steps.candidate import Candidate
from extract.steps.shapes.no_verb import leading_thing
from extract.steps.shapes.tools import tool_verb

DOSES = frozenset(
    {"little", "more", "some", "another", "fresh", "bit", "touch", "dab", "drop", "drops", "lick", "smear"}
)


def dosed(bench: Bench, piece: Piece) -> Candidate | None:
    """A small amount of a material, or a tool behind "then"."""
    thing = leading_thing(bench, piece)
    verb = tool_verb(bench, thing) if thing is not None else None
    if thing is None or verb is None or bench.word(thing.end) == "of":
        return None
    opened = set(bench.lower[piece.start : piece.lead])
    alone = not any(bench.doc[k].is_alpha for k in range(thing.end, piece.end))
    then = bool({"then", "next"} & opened) or ("now" in opened and alone)
    if not then and (kind_of(bench, thing) == "tool" or not is_dose(bench, thing)):
        return None
    return Candidate(
        piece, piece.start, piece.end, "dosed", verb, verb, None, "doing", (thing.end, piece.end), tool=thing
    )


def is_dose(bench: Bench, thing: Thing) -> bool:
    """ "a drop of oil", "another coat of varnish", "little cork grease"."""
    if thing.start == thing.head:
        return False
    small = bench.tag(thing.start) in {"DT", "CD"} or bench.word(thing.start) in DOSES
    return small and bool({"of", *DOSES} & set(bench.lower[thing.start : thing.head]))


def is_dose_noun(bench: Bench, thing: Thing) -> bool:
    """ "one drop", "a smear": a dose by itself."""
    return bench.word(thing.head) in DOSES or bench.word(thing.head).removesuffix("s") in DOSES
