"""A thing named as a heading, and what is said of it instead of a verb: "let off next, i want a millimetre and a half".

Takes "relief, with a capo on, 0.018 inch" as a reading; refuses "spindles next" where the work is told behind it, and a
heading of which no figure is said.
"""

from __future__ import annotations

from collections.abc import Callable

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, extent, is_workable, kind_of, thing_at
from extract.steps.candidate import Candidate

_MARKS = frozenset({"now", "next", "then", "first", "here"})
_WANTING = frozenset({"want", "wants", "should", "ought", "must", "until", "till", "needs", "lets", "catch", "sits"})
_KINDS = frozenset(
    {"length", "angle", "torque", "pressure", "mass", "force", "voltage", "current", "resistance", "pitch"}
)
_REACH = 4
_CUES = 2


def headed(
    bench: Bench, pieces: tuple[Piece, ...], index: int, read: Callable[[Piece], Candidate | None]
) -> Candidate | None:
    """A bare thing behind or before "now" or "next", or before a comma, and a figure that nothing else reads."""
    piece = pieces[index]
    thing = _heading(bench, piece)
    if thing is None:
        return None
    marked = bool(_MARKS & set(bench.lower[piece.start : piece.end]))
    end, told = piece.end, piece
    kinds = bench.unit_kinds(piece.start, piece.end)
    for other in pieces[index + 1 : index + 1 + _REACH]:
        if bench.cue[other.start] - bench.cue[piece.start] > _CUES or (not marked and other.sentence != piece.sentence):
            break
        if read(other) is not None:
            return None
        if kinds & _KINDS and other.sentence != piece.sentence:
            break
        here = bench.unit_kinds(other.start, other.end)
        told = other if here & _KINDS and not kinds & _KINDS else told
        kinds, end = kinds | here, other.end
    if not kinds & _KINDS:
        return None
    wanted = bool(_WANTING & set(bench.lower[piece.start : end]))
    if not marked and _has_verb(bench, piece.start, end):
        return None
    verb = "set / adjust" if wanted else "measure"
    said = "set" if wanted else "measure"
    shape = "headed" if wanted else "finding"
    rest = (told.start, told.end) if told is not piece else (thing.end, piece.end)
    return Candidate(piece, piece.start, end, shape, verb, said, thing, "doing", rest, fronted=thing)


def _heading(bench: Bench, piece: Piece) -> Thing | None:
    """The thing that is all that a piece says, "now" and "next" left out."""
    if piece.leans:
        return None
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None or thing.pronoun or not is_workable(bench, thing) or kind_of(bench, thing) == "tool":
        return None
    behind = extent(bench, thing, piece.end)
    alone = all(not bench.doc[k].is_alpha or bench.word(k) in _MARKS for k in range(behind, piece.end))
    return (
        thing if alone and bench.tag(piece.lead) != "CD" and bench.unit_kinds(thing.start, thing.end) == set() else None
    )


def _has_verb(bench: Bench, start: int, end: int) -> bool:
    return any(bench.tag(k) in {"VBZ", "VBP", "VBD", "MD"} or bench.word(k) == "'s" for k in range(start, end))
