"""What is to be done: "you go straight across", "you want to warm it first", "one cuts the heart last".

Refuses "you'll split the side" (what would happen), "you did too much", "you can file it off" (what is possible).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.steps.candidate import Candidate
from extract.steps.shapes.verb_phrase import verb_phrase

_TO = frozenset({"to", "na", "ta"})
_URGED = frozenset({"want", "need", "have", "got", "ought"})


def advice(bench: Bench, piece: Piece) -> Candidate | None:
    """A piece whose subject is "you" before a present verb or an urging one."""
    if piece.leans:
        return None
    if bench.word(piece.lead) == "one":
        return _one(bench, piece)
    if bench.word(piece.lead) != "you":
        return None
    at = piece.lead + 1
    while at < piece.end and (bench.tag(at) == "RB" or bench.word(at) in {"can", "should", "must", "just", "then"}):
        if bench.word(at) in {"n't", "not", "never", "can"}:
            return None
        at += 1
    urged = bench.word(at) in _URGED | {"'ve", "'ll", "'re", "wan", "got"}
    while at < piece.end and bench.word(at) in _URGED | {
        "'ve",
        "to",
        "'ll",
        "'d",
        "'re",
        "gon",
        "na",
        "wan",
        "ta",
        "going",
    }:
        at += 1
    verb = bench.verb(at)
    if (
        verb is None
        or at >= piece.end
        or verb.form != "base"
        or (bench.word(piece.lead + 1) == "'ll" and bench.word(at - 1) not in _TO)
    ):
        return None
    if urged and bench.word(at - 1) not in _TO:
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
        laid=phrase.tool,
    )


def _one(bench: Bench, piece: Piece) -> Candidate | None:
    """ "one pushes the latch": the doer is anybody."""
    at = piece.lead + 1
    while at < piece.end and bench.tag(at) == "RB":
        at += 1
    verb = bench.verb(at) if at < piece.end else None
    if verb is None or verb.form != "s":
        return None
    phrase = verb_phrase(bench, verb, piece.end)
    if phrase.thing is None:
        return None
    rest = (verb.at + 1, piece.end)
    return Candidate(
        piece,
        piece.start,
        piece.end,
        "advice",
        phrase.lemma,
        verb.lemma,
        phrase.thing,
        "advice",
        rest,
        laid=phrase.tool,
    )
