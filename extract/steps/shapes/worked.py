"""Work told by a participle behind its thing, without a verb: "hessian over the top, turned up and stapled".

Takes "a bit of kid leather skived down to three tenths", "sieved until it behaves"; refuses "the top cracked right
through" (a fault), "glued by the last man" (somebody else's work), "the waxed thread" (only which).
"""

from __future__ import annotations

from extract.clauses.bench import Bench, Verb
from extract.clauses.pieces import Piece
from extract.clauses.things import is_workable, kind_of, thing_at, with_whole
from extract.steps.candidate import Candidate
from extract.steps.shapes.verb_phrase import verb_phrase

_FINITE = frozenset({"VBZ", "VBP", "MD", "PRP"})


def worked(bench: Bench, piece: Piece) -> Candidate | None:
    """A piece without a finite verb that ends on work done, its thing before the participle where one is named."""
    if piece.leans or piece.joiner in {"or", "but"}:
        return None
    span = range(piece.lead, piece.end)
    if any(bench.tag(k) in _FINITE or bench.word(k) in {"'s", "was", "were", "by"} for k in span):
        return None
    verb = next((read for k in reversed(span) if (read := _participle(bench, k, piece.end)) is not None), None)
    if verb is None:
        return None
    thing = thing_at(bench, piece.lead, verb.at)
    if thing is not None and kind_of(bench, thing) == "measure" and bench.word(thing.end) == "of":
        thing = thing_at(bench, thing.end + 1, verb.at)
    if verb.at > piece.lead and (thing is None or thing.pronoun or not is_workable(bench, thing)):
        return None
    if thing is not None:
        thing = with_whole(bench, thing, verb.at)
    phrase = verb_phrase(bench, verb, piece.end)
    rest = (verb.at + 1, piece.end)
    return Candidate(
        piece, piece.start, piece.end, "worked", phrase.lemma, verb.lemma, thing, "done", rest, fronted=thing
    )


def _participle(bench: Bench, at: int, end: int) -> Verb | None:
    if bench.tag(at) not in {"VBN", "VBD"} or bench.tag(at - 1) in {"DT", "PRP$", "VBZ", "VBP"}:
        return None
    verb = bench.verb(at)
    same = verb is not None and bench.word(at) in bench.words.same_past
    if verb is None or not (verb.form == "past" or same) or bench.words.kind(verb.lemma) != "work":
        return None
    if f"{verb.lemma} {bench.word(at + 1)}" in bench.words.idle:
        return None
    if verb.lemma in bench.words.damage_verbs or (at + 1 < end and bench.is_noun(at + 1)):
        return None
    return verb
