"""A thing and where it was put, without a verb: "axle through", "cassette back on", "bob down a turn", "clamps on".

Refuses "rear wheel off a commuter" (where it comes from), "new one on order" (not here yet).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.grammar import PARTICLES
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, kind_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.no_verb import leading_thing
from extract.steps.shapes.tools import tool_verb

_TAIL = frozenset(
    {"", ".", ",", ";", "!", "and", "again", "nice", "not", "just", "only", "snug", "with", "by", "tight"}
)
_TAIL |= {"up", "at", "now", "first", "for", "till", "until", "then", "same"}
_WAITING = frozenset({("hang", "on"), ("hold", "on")})
_ON = frozenset({"on", "over", "round", "around"})


def put(bench: Bench, piece: Piece) -> Candidate | None:
    """A thing and a particle behind which no place is named, or one for a fresh thing."""
    thing = leading_thing(bench, piece) or _back_part(bench, piece)
    if thing is None:
        return None
    first = thing.end
    if bench.lower[piece.lead : piece.lead + 2] in _WAITING:
        return None
    if first >= piece.end or bench.word(first) not in PARTICLES:
        return None
    at = first + 1
    if at < piece.end and bench.word(at) in PARTICLES and bench.word(first) == "back":
        at += 1
    if at == piece.end and bench.word(at) in {"it", "them", "that", "this", "these"}:
        return None  # "the ripple on | it was nine volts"
    said = " ".join(bench.lower[first:at])
    behind = bench.word(at) if at < piece.end else ""
    fresh = bench.word(thing.start) in {"new", "clean", "fresh"} or bench.word(first) == "back"
    if said not in bench.words.states or not (behind in _TAIL or fresh or _is_amount(bench, at, piece.end)):
        return None
    if thing.pronoun and behind == "order":
        return None
    verb = tool_verb(bench, thing)
    if verb is not None and said in _ON:
        return Candidate(piece, piece.start, piece.end, "put", verb, verb, None, "doing", (at, piece.end), tool=thing)
    place_named = at == first + 1 and thing_at(bench, at, piece.end) is not None
    verb = bench.words.states[said]
    rest = (first if place_named else at, piece.end)
    return Candidate(piece, piece.start, piece.end, "put", verb, verb, thing, "doing", rest, fronted=thing)


def _back_part(bench: Bench, piece: Piece) -> Thing | None:
    """ "back cover off": the back one, where the word is no particle."""
    at = piece.lead
    named = bench.word(at) == "back" and bench.word(at + 1).isalpha() and bench.word(at + 1) not in PARTICLES
    ends = at + 3 == piece.end or bench.word(at + 3) in _TAIL
    placed = bench.tag(at + 1) not in {"IN", "DT", "TO"} and bench.word(at + 2) in {"off", "on", "out"} and ends
    return Thing(at, at + 2, at + 1) if named and placed and at + 3 <= piece.end else None


def _is_amount(bench: Bench, at: int, end: int) -> bool:
    """ "bob down a turn and a half", "heads off, ten lugs": a count or measure behind."""
    thing = thing_at(bench, at, end)
    return bench.tag(at) == "CD" or (thing is not None and kind_of(bench, thing) == "measure")
