"""The particle first: "off comes the cassette", "off it comes", "in with the new one", "there goes the old head".

Refuses "there goes my afternoon" (no thing of the bench).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.grammar import PARTICLES
from extract.clauses.pieces import Piece
from extract.clauses.things import thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.tools import tool_verb

_MOVES = frozenset({"comes", "goes", "go", "come", "came", "went"})
_PRONOUNS = frozenset({"it", "they", "she", "he"})


def inverted(bench: Bench, piece: Piece) -> Candidate | None:
    """A particle, a verb of moving or "with", and a thing."""
    at = piece.lead
    placed = _place_first(bench, piece)
    if placed is not None:
        return placed
    particle = [bench.word(at)] if bench.word(at) in PARTICLES | {"there"} else []
    if particle and bench.word(at + 1) in PARTICLES:
        at += 1
        particle.append(bench.word(at))
    if not particle or bench.word(at + 1) not in _MOVES | {"with"} | _PRONOUNS:
        return None
    pronoun_first = bench.word(at + 1) in _PRONOUNS
    if pronoun_first and bench.word(at + 2) not in _MOVES:
        return None
    thing = thing_at(bench, at + 1 if pronoun_first else at + 2, piece.end)
    if thing is None:
        return None
    state = "off" if particle == ["there"] else " ".join(particle)
    verb = bench.words.states.get(state)
    if verb is None:
        return None
    return Candidate(
        piece,
        piece.start,
        piece.end,
        "inverted",
        verb,
        verb,
        thing,
        "doing",
        (at + 3 if pronoun_first else thing.end, piece.end),
        fronted=thing,
    )


def _place_first(bench: Bench, piece: Piece) -> Candidate | None:
    """ "into the jar goes the movement", "on the shaft comes a thin film of grease"."""
    at = piece.lead
    if bench.tag(at) not in {"IN", "TO"}:
        return None
    place = thing_at(bench, at + 1, piece.end)
    if place is None or place.end >= piece.end or bench.word(place.end) not in _MOVES:
        return None
    thing = thing_at(bench, place.end + 1, piece.end)
    if thing is None or thing.pronoun:
        return None
    inner = thing_at(bench, thing.end + 1, piece.end) if bench.word(thing.end) == "of" else thing
    verb = tool_verb(bench, inner) if inner is not None else None
    if verb is not None:
        return Candidate(
            piece, piece.start, piece.end, "inverted", verb, "put", place, "doing", (at, place.end), fronted=thing
        )
    return Candidate(
        piece, piece.start, piece.end, "inverted", "put", "put", thing, "doing", (at, place.end), fronted=thing
    )
