"""Things in a row with a figure or an effort: "lockring, 40 Nm", "torque wrench, 45 Nm", "degreaser, rag, keep at it".

Refuses "cup and cone, 8 speed" (a description: neither tool nor figure that tells of work).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, is_workable, kind_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.tools import figure_verb, tool_verb

_EFFORTS = (("keep", "at", "it"), ("keep", "going"), ("at", "it"), ("and", "patience"), ("elbow", "grease"))
_REACH = 4


def tool_list(bench: Bench, pieces: tuple[Piece, ...], index: int) -> Candidate | None:
    """A piece that is a bare thing, and what the pieces behind it in the same sentence tell of the work."""
    piece = pieces[index]
    thing = _bare(bench, piece)
    if thing is None:
        return _metered(bench, pieces, index)
    verb = tool_verb(bench, thing)
    for other in pieces[index + 1 : index + 1 + _REACH]:
        if other.sentence != piece.sentence:
            return None
        by_figure = figure_verb(bench, other.start, other.end)
        if by_figure in {"tighten", "inflate"}:
            target = None if verb else thing
            return Candidate(
                piece,
                piece.start,
                other.end,
                "listed",
                by_figure,
                by_figure,
                target,
                "doing",
                (other.start, other.end),
                fronted=target,
                tool=thing if verb else None,
            )
        if verb and any(bench.lower[other.lead : other.lead + len(effort)] == effort for effort in _EFFORTS):
            return Candidate(
                piece,
                piece.start,
                other.end,
                "listed",
                verb,
                verb,
                _behind(bench, pieces, index),
                "doing",
                (other.start, other.start),
                tool=thing,
            )
    return None


def _bare(bench: Bench, piece: Piece) -> Thing | None:
    """The thing that is all there is in a piece."""
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None or thing.pronoun or not is_workable(bench, thing):
        return None
    return thing if all(not bench.doc[k].is_alpha for k in range(thing.end, piece.end)) else None


def _behind(bench: Bench, pieces: tuple[Piece, ...], index: int) -> Thing | None:
    """The thing of a clause of time behind the list: "until the cups are silver"."""
    for piece in pieces[index + 1 : index + 1 + _REACH]:
        if piece.joiner in {"till", "until"} and piece.sentence == pieces[index].sentence:
            return thing_at(bench, piece.lead, piece.end)
    return None


def _metered(bench: Bench, pieces: tuple[Piece, ...], index: int) -> Candidate | None:
    """ "meter on ohms, across the first capacitor: 3 k": an instrument, what it is laid to, and a figure behind."""
    piece = pieces[index]
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None or thing.pronoun or tool_verb(bench, thing) != "measure" or bench.tag(thing.end) != "IN":
        return None
    target: Thing | None = None
    for other in pieces[index : index + _REACH]:
        if other.sentence != piece.sentence:
            return None
        for at in range(thing.end if other is piece else other.start, other.end):
            found = thing_at(bench, at, other.end)
            if target is None and found is not None and kind_of(bench, found) == "part":
                target = found
            if bench.tag(at) == "CD" and other is not piece:
                return Candidate(
                    piece, piece.start, other.end, "reading", "measure", "measure", target, "done", (at, other.end)
                )
    return None
