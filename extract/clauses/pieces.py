"""Clauses: the stretches of a narration that say one thing.

Takes "coil it down | slide the keeper on | hook it on the arbor | and last winter i said ..."; refuses a cut inside
"let it walk" or "ask me how i know".
"""

from __future__ import annotations

from dataclasses import dataclass

from extract.clauses.bench import Bench
from extract.clauses.cutter import Cutter
from extract.clauses.grammar import PARTICLES, grammar


@dataclass(frozen=True, slots=True)
class Piece:
    """Tokens `start` to `end`; `joiner` is the word that ties it to what came before, "" where there is none.

    `lead` is the first token behind joiner, openers and adverbs.
    """

    start: int
    end: int
    joiner: str
    lead: int
    sentence: int

    @property
    def leans(self) -> bool:
        """True where the piece only says when, why or how long."""
        return self.joiner in grammar().leaning


def pieces_of(bench: Bench) -> tuple[Piece, ...]:
    """The pieces of a narration, in order, every token in exactly one. Linear in the number of tokens."""
    cutter = Cutter(bench)
    starts = [0] if len(bench) else []
    for at in range(1, len(bench)):
        if cutter.cuts(at, starts[-1]):
            starts.append(at)
    pieces = []
    sentence = 0
    for start, end in zip(starts, [*starts[1:], len(bench)], strict=True):
        if start and bench.doc[start].is_sent_start:
            sentence += 1
        pieces.append(_piece(bench, start, end, sentence))
    return tuple(pieces)


def _piece(bench: Bench, start: int, end: int, sentence: int) -> Piece:
    words, word = grammar(), bench.word(start)
    joiner = word if word in words.subordinators | words.joins else ""
    opened = words.opener_phrases.length_at(bench.lower, start)
    if word in words.half_subordinators and end - start > 1 and not opened:
        joiner = word
    if word in {"and", "but"} and bench.word(start + 1) in words.subordinators | {"before", "after", "till", "until"}:
        joiner = bench.word(start + 1)
    lead = start + opened if start + opened < end else start
    while lead < end - 1 and (bench.word(lead) in words.openers | words.subordinators or (lead == start and joiner)):
        inverted = bench.word(lead) in PARTICLES | {"there"} and bench.word(lead + 1) in words.movers
        if bench.begins_clause(lead) or inverted:
            break
        lead += 1
    return Piece(start, end, joiner, lead, sentence)
