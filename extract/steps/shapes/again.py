"""The step before done to another thing: "then the same on the other side", "same again for the back".

Refuses "it's the same age as the case" (no place behind).
"""

from __future__ import annotations

from dataclasses import replace

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import is_workable, thing_at
from extract.steps.candidate import Candidate

_PLACES = frozenset({"on", "for", "with", "to", "at", "along", "down", "up"})


def again(bench: Bench, piece: Piece, last: Candidate) -> Candidate | None:
    """The last candidate once more, on the thing named behind "the same"."""
    at = piece.lead + (bench.word(piece.lead) == "the")
    if piece.leans or bench.word(at) != "same":
        return None
    at += 1
    at += bench.word(at) in {"again", "thing", "job", "treatment"}
    thing = thing_at(bench, at + 1, piece.end) if bench.word(at) in _PLACES else None
    if thing is None or not is_workable(bench, thing):
        return None
    return replace(
        last,
        piece=piece,
        start=piece.start,
        end=piece.end,
        shape="again",
        thing=thing,
        fronted=thing,
        tool=None,
        rest=(thing.end, piece.end),
        said=last.verb,
        mode="doing",
        own_subject=True,
    )
