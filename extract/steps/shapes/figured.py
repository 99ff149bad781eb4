"""A thing and a figure that tells the work, without a verb: "tyre up to 80 psi", "new spring, four thou thick".

Refuses "new cone" (no figure), "action at 2 mm" (a length tells no work of an old part).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.steps.candidate import Candidate
from extract.steps.shapes.no_verb import leading_thing
from extract.steps.shapes.tools import figure_verb

_BETWEEN = frozenset({"up", "to", "at", "on", "down", "back"})


def figured(bench: Bench, piece: Piece) -> Candidate | None:
    """A thing and a figure of a telling kind, or a new thing and its size."""
    thing = leading_thing(bench, piece)
    if thing is None or thing.pronoun:
        return None
    verb = figure_verb(bench, thing.end, piece.end) if bench.word(thing.end) in _BETWEEN else None
    if verb not in {"tighten", "inflate", "heat"}:
        new = "new" in bench.lower[thing.start : thing.start + 2]
        sized = bench.tag(thing.end) == "CD" or (bench.word(thing.end) == "," and bench.tag(thing.end + 1) == "CD")
        if not (new and sized):
            return None
        verb = "fit"
    return Candidate(
        piece, piece.start, piece.end, "figured", verb, verb, thing, "doing", (thing.end, piece.end), fronted=thing
    )
