"""A reading told as a finding: "the text block measures 222 by 140 mm", "I've got 0.4 on the feeler", "found it at 52".

Refuses "I've got two spares" (no unit), "the case measures up" (no figure).
"""

from __future__ import annotations

from dataclasses import replace

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, is_workable, kind_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.tools import tool_verb

_MEASURES = frozenset({"measures", "reads", "weighs", "gauges", "checks", "meters", "mikes", "micks"})
_HAVING = (
    ("i", "'ve", "got"),
    ("i", "'ve"),
    ("i", "have"),
    ("we", "'ve", "got"),
    ("i", "'m", "getting"),
    ("there", "'s"),
)
_FINDING = (("i", "found"), ("i", "find"), ("i", "'m", "finding"), ("i", "am", "finding"), ("i", "'ve", "found"))
_TAKEN = frozenset({"length", "voltage", "current", "resistance", "mass", "pressure", "temperature", "frequency"})
_PLACES = frozenset({"across", "on", "at", "over", "of", "in", "between", "under", "along"})


def found(bench: Bench, piece: Piece) -> Candidate | None:
    """A thing that measures a figure, or the speaker who has got or found one."""
    if not piece.leans and bench.tag(piece.lead) == "CD" and (tool := _gauged(bench, piece)) is not None:
        return replace(_measured(piece, None), laid=tool)
    if piece.leans or not bench.unit_kinds(piece.start, piece.end) & _TAKEN:
        return None
    at = piece.lead
    for words in (*_HAVING, *_FINDING):
        if bench.lower[at : at + len(words)] == words:
            return _had(bench, piece, at + len(words), finding=words in _FINDING)
    for k in range(at + 1, piece.end):
        at = k + 1 if bench.word(k) in {"and", "but", "so"} else at
        if bench.word(k) in _MEASURES and _is_figure(bench, k + 1):
            thing = thing_at(bench, at, k)
            if thing is not None and not thing.pronoun and is_workable(bench, thing):
                return _measured(piece, thing)
    return None


def _gauged(bench: Bench, piece: Piece) -> Thing | None:
    """ "0.8 on the feeler": the instrument behind a bare figure."""
    at = next((k for k in range(piece.lead, piece.end) if bench.word(k) in {"on", "by", "with"}), None)
    tool = thing_at(bench, at + 1, piece.end) if at is not None else None
    return tool if tool is not None and tool_verb(bench, tool) == "measure" else None


def _had(bench: Bench, piece: Piece, at: int, *, finding: bool) -> Candidate | None:
    thing = None if _is_figure(bench, at) else thing_at(bench, at, piece.end)
    if thing is not None:
        if not finding or bench.word(thing.end) != "at":
            return None
        return _measured(piece, thing)
    if not _is_figure(bench, at):
        return None
    for k in range(at + 1, piece.end):
        if bench.word(k) in _PLACES:
            place = thing_at(bench, k + 1, piece.end)
            if place is not None and not place.pronoun and kind_of(bench, place) not in {"measure", "tool", "body"}:
                return _measured(piece, place)
    return _measured(piece, None) if not piece.joiner else None


def _is_figure(bench: Bench, at: int) -> bool:
    while bench.word(at) in {"about", "around", "roughly", "just", "only", "under", "over", "a", "it", "at", "maybe"}:
        at += 1
    return bench.tag(at) == "CD" or bench.word(at) in {"half", "quarter"}


def _measured(piece: Piece, thing: Thing | None) -> Candidate:
    return Candidate(
        piece, piece.start, piece.end, "reading", "measure", "measure", thing, "done", (piece.start, piece.end)
    )
