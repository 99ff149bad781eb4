"""Put back, without a thing or a verb: "back in its box", "and back on the bench".

Refuses "back plate on" (a thing), "back to work" (no place).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import is_workable, thing_at
from extract.steps.candidate import Candidate

_PLACES = frozenset({"in", "on", "into", "onto", "to"})


def returned(bench: Bench, piece: Piece) -> Candidate | None:
    """ "back", a preposition and a place, at the start of a piece."""
    if piece.leans or thing_at(bench, piece.lead, piece.end) is not None:
        return None
    at = next((k for k in range(piece.start, piece.lead + 1) if bench.word(k) == "back"), piece.end)
    place = thing_at(bench, at + 2, piece.end) if bench.word(at + 1) in _PLACES else None
    if place is None or not is_workable(bench, place):
        return None
    return Candidate(piece, piece.start, piece.end, "returned", "refit", "put it", None, "doing", (at, piece.end))
