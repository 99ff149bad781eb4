"""The loosest reading: a tool and a part named in one breath without a verb: "the fifth slot, the 14 thou file".

Refuses "the wrench is on the shelf" (a verb), "a file" (no part), a tool named twice in one sentence.
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, kind_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.tools import tool_verb

_REACH = 3


def tool_named(bench: Bench, pieces: tuple[Piece, ...], index: int) -> Candidate | None:
    """A piece that names a tool or material of known use, in a sentence that names a part and has no verb."""
    piece = pieces[index]
    sentence = [one for one in pieces[max(0, index - _REACH) : index + _REACH] if one.sentence == piece.sentence]
    if piece.leans or any(_has_verb(bench, one) for one in sentence):
        return None
    tool = next((one for one in _things(bench, piece) if tool_verb(bench, one)), None)
    part = next((one for one in _things(bench, *sentence) if kind_of(bench, one) == "part"), None)
    verb = tool_verb(bench, tool) if tool is not None else None
    if tool is None or verb is None or part is None or part.head == tool.head:
        return None
    return Candidate(
        piece, piece.start, piece.end, "tool named", verb, verb, part, "doing", (piece.end, piece.end), tool=tool
    )


def _has_verb(bench: Bench, piece: Piece) -> bool:
    return any(
        bench.tag(k) in {"VBZ", "VBP", "VBD", "MD", "VB"} or bench.word(k) == "'s"
        for k in range(piece.start, piece.end)
    )


def _things(bench: Bench, *pieces: Piece) -> list[Thing]:
    found = []
    for piece in pieces:
        at = piece.lead
        while at < piece.end:
            thing = thing_at(bench, at, piece.end)
            if thing is not None and not thing.pronoun:
                found.append(thing)
            at = thing.end if thing is not None else at + 1
    return found
