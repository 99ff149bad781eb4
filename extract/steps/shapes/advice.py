"""What the viewer is told to do: "you go straight across", "you want to warm it first".

Refuses "you'll split the side" (what would happen), "you did too much", "you could hear it".
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.steps.candidate import Candidate
from extract.steps.shapes.verb_phrase import verb_phrase

_URGED = frozenset({"want", "need", "have", "got", "ought"})


def advice(bench: Bench, piece: Piece) -> Candidate | None:
    """A piece whose subject is "you" before a present verb or an urging one."""
    if bench.word(piece.lead) != "you" or piece.leans:
        return None
    at = piece.lead + 1
    while at < piece.end and (bench.tag(at) == "RB" or bench.word(at) in {"can", "should", "must", "just", "then"}):
        if bench.word(at) in {"n't", "not", "never"}:
            return None
        at += 1
    urged = bench.word(at) in _URGED | {"'ve", "'ll"}
    while at < piece.end and bench.word(at) in _URGED | {"'ve", "to", "'ll", "'d", "gon", "na"}:
        at += 1
    verb = bench.verb(at)
    if (
        verb is None
        or at >= piece.end
        or verb.form != "base"
        or (bench.word(piece.lead + 1) == "'ll" and bench.word(at - 1) != "to")
    ):
        return None
    if urged and bench.word(at - 1) != "to":
        return None
    phrase = verb_phrase(bench, verb, piece.end)
    return Candidate(
        piece,
        piece.start,
        piece.end,
        "advice",
        phrase.lemma,
        verb.lemma,
        phrase.thing,
        "advice",
        (verb.at + 1, piece.end),
    )
