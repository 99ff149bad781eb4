"""The step before done to another thing: "then the same on the other side", "same again for the back".

Refuses "it's the same age as the case" (no place behind).
"""

from __future__ import annotations

from dataclasses import replace

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, is_workable, thing_at
from extract.steps.candidate import Candidate

_PLACES = frozenset({"on", "for", "with", "to", "at", "along", "down", "up"})


def again(bench: Bench, piece: Piece, last: Candidate) -> Candidate | None:
    """The last candidate once more, on the thing named behind "the same"."""
    named = thing_at(bench, piece.lead, piece.end)
    behind = named.end if named is not None else piece.end
    behind += bench.word(behind) in {"the", "next", "now"}
    if (
        named is not None
        and not piece.leans
        and bench.lower[behind : behind + 2] in {("same", "way"), ("same", "again")}
    ):
        return _once_more(last, piece, named, (behind + 2, piece.end))
    at = piece.lead + (bench.word(piece.lead) == "the")
    if piece.leans or bench.word(at) != "same":
        return None
    at += 1
    at += bench.word(at) in {"again", "thing", "job", "treatment"}
    thing = thing_at(bench, at + 1, piece.end) if bench.word(at) in _PLACES else None
    if thing is None or not is_workable(bench, thing):
        return None
    return _once_more(last, piece, thing, (thing.end, piece.end))


def _once_more(last: Candidate, piece: Piece, thing: Thing, rest: tuple[int, int]) -> Candidate:
    return replace(
        last,
        piece=piece,
        start=piece.start,
        end=piece.end,
        shape="again",
        thing=thing,
        fronted=thing,
        tool=None,
        rest=rest,
        said=last.verb,
        mode="doing",
        own_subject=True,
    )
