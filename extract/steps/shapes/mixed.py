"""A mixture told by its parts: "20 grams of granules in 40 grams of water", "one part to five of water".

Refuses "three grams of dust in the case" (one amount alone).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import thing_at
from extract.steps.candidate import Candidate

_PARTS = frozenset({"part", "parts"})
_AMOUNTS = frozenset({"mass", "volume"})


def mixed(bench: Bench, piece: Piece) -> Candidate | None:
    """Two amounts of two things, or parts to parts, in one piece."""
    if piece.leans:
        return None
    for at in range(piece.start, piece.end - 3):
        if bench.word(at) in _PARTS and bench.tag(at - 1) == "CD" and bench.word(at + 1) in {"to", "of"}:
            return _candidate(bench, piece, at - 1)
    amounts = [k for k in range(piece.start, piece.end) if bench.unit_kinds(k, k + 1) & _AMOUNTS]
    if len(amounts) < 2:
        return None
    between = set(bench.lower[amounts[0] : amounts[1]])
    return _candidate(bench, piece, amounts[0]) if {"of"} <= between and between & {"in", "to", "into"} else None


def _candidate(bench: Bench, piece: Piece, at: int) -> Candidate | None:
    things = [thing_at(bench, k + 1, piece.end) for k in range(at, piece.end) if bench.word(k) == "of"]
    thing = next((one for one in things if one is not None and not one.pronoun), None)
    if thing is None:
        return None
    return Candidate(piece, piece.start, piece.end, "mixed", "mix", "mix", thing, "doing", (at, piece.end))
