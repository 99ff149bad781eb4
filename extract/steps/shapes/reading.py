"""A reading taken: "the micrometer says point one eight", "I get thirteen and an eighth", "HT reads 212 volts".

Refuses "pot measures eleven inches" (nobody takes it), "the book says 215" (no instrument).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, is_workable, kind_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.tools import figure_verb, tool_verb

_SAYS = frozenset(
    {
        "says",
        "reads",
        "shows",
        "gives",
        "said",
        "read",
        "showed",
        "on",
        "across",
        "goes",
        "slides",
        "slips",
        "under",
        "at",
    }
)
_IS = frozenset({"is", "'s", "are", "reads", "sits", "comes", "at", ",", "gets", "has", "was"})
_GETTING = (
    ("i", "get"),
    ("i", "got"),
    ("i", "make"),
    ("i", "made"),
    ("i", "'m", "getting"),
    ("i", "'m", "reading"),
    ("i", "'m", "seeing"),
    ("we", "get"),
    ("we", "got"),
    ("we", "'re", "getting"),
    ("i", "read"),
)


def reading(bench: Bench, piece: Piece) -> Candidate | None:
    """An instrument, or "i get", and a figure."""
    if piece.leans:
        return None
    got = next((phrase for phrase in _GETTING if bench.lower[piece.lead : piece.lead + len(phrase)] == phrase), None)
    if got is not None:
        at = piece.lead + len(got)
        while bench.word(at) in {"it", "that", "about", "around", "just", "them", "this", "minus", "plus"}:
            at += 1
        if bench.tag(at) != "CD" or (bench.is_noun(at + 1) and not _is_measure(bench, at, piece.end)):
            return None
        return _measured(piece, None, piece.lead)
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None or thing.end >= piece.end or bench.word(thing.end) not in _SAYS | _IS:
        return None
    if thing.pronoun and bench.word(thing.end) not in {"reads", "shows"}:
        return None
    if bench.word(thing.end) == "reads" and bench.tag(thing.end + 1) == "CD":
        return _measured(piece, None if tool_verb(bench, thing) == "measure" else thing, piece.start)
    if bench.word(thing.end) in _IS and figure_verb(bench, thing.end, piece.end) == "measure":
        return _measured(piece, thing, piece.start)
    if tool_verb(bench, thing) != "measure" or not _has_figure(bench, thing.end, piece.end):
        return None
    return _measured(piece, _named(bench, thing.end + 1, piece.end), thing.end)


def _measured(piece: Piece, thing: Thing | None, start: int) -> Candidate:
    return Candidate(piece, piece.start, piece.end, "reading", "measure", "measure", thing, "done", (start, piece.end))


def _named(bench: Bench, start: int, end: int) -> Thing | None:
    for at in range(start, end):
        thing = thing_at(bench, at, end)
        if thing is not None and not thing.pronoun and is_workable(bench, thing) and kind_of(bench, thing) != "measure":
            return thing
    return None


def _has_figure(bench: Bench, start: int, end: int) -> bool:
    return any(bench.tag(k) == "CD" or bench.word(k) in {"point", "half", "quarter"} for k in range(start, end))


def _is_measure(bench: Bench, at: int, end: int) -> bool:
    return any(bench.words.nouns.get(bench.word(k)) == "measure" for k in range(at, min(at + 6, end)))
