"""What a thing is set to, told as what it wants: "it wants a sixty-fourth", "the gap needs two millimetres".

Refuses "the hammer wants replacing" (no figure), "the gap should be two" (a rule, nothing done).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import extent, is_workable, thing_at
from extract.steps.candidate import Candidate

_WANTS = (
    ("wants",),
    ("want",),
    ("needs",),
    ("gets",),
    ("wants", "to", "be"),
    ("needs", "to", "be"),
    ("is", "set", "to"),
)
_LENGTHS = frozenset({"length", "angle", "torque", "pressure", "mass", "force", "voltage", "current", "pitch"})


def wanted(bench: Bench, piece: Piece) -> Candidate | None:
    """A thing that wants a figure."""
    if piece.leans or not bench.unit_kinds(piece.start, piece.end) & _LENGTHS:
        return None
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None or not (thing.pronoun or is_workable(bench, thing)):
        return None
    for at in (thing.end, extent(bench, thing, piece.end)):
        said = next((words for words in _WANTS if bench.lower[at : at + len(words)] == words), None)
        if said is not None and any(bench.tag(k) == "CD" for k in range(at, min(at + 6, piece.end))):
            rest = (at + len(said), piece.end)
            return Candidate(
                piece, piece.start, piece.end, "wanted", "set / adjust", "set", thing, "doing", rest, fronted=thing
            )
    return None
