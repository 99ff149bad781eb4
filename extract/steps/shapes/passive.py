"""The work told of the thing: "the rod gets backed off", "the seat's been cleaned", "the plates are glued".

Refuses "neck's stamped 1976" (a description), "it was glued once before" (somebody else's work), "the hole's worn".
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import thing_at, with_whole
from extract.steps.candidate import Candidate
from extract.steps.shapes.verb_phrase import verb_phrase

_NOW = frozenset({"gets", "get", "is", "are", "'s", "'re", "getting", "was", "were"})


def passive(bench: Bench, piece: Piece) -> Candidate | None:
    """A thing, "gets" or "is", and a past form of a verb of work."""
    if piece.leans:
        return None
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None:
        return None
    thing = with_whole(bench, thing, piece.end)
    at = thing.end
    helper = bench.word(at)
    if helper in {"have", "'ve", "has", "'s"} and bench.word(at + 1) == "been":
        at += 1
        helper = "been"
    if helper not in _NOW | {"been"}:
        return None
    at += 1
    while at < piece.end and (bench.tag(at) == "RB" or bench.word(at) in {"all", "being", "now"}):
        if bench.word(at) in {"n't", "not", "never"}:
            return None
        at += 1
    verb = bench.verb(at)
    if verb is None or at >= piece.end or (verb.form != "past" and bench.word(at) not in bench.words.same_past):
        return None
    if bench.tag(at) == "VBD" and not bench.word(at).endswith("ed") and helper not in {"was", "were", "is", "are"}:
        return None
    if helper not in {"gets", "get"} and (thing.pronoun or (helper == "'s" and bench.tag(at + 1) == "CD")):
        return None
    if helper in {"was", "were"} and ("by" in bench.lower[at : piece.end] or bench.tag(at - 1) == "RB"):
        return None
    phrase = verb_phrase(bench, verb, piece.end)
    if bench.words.kind(verb.lemma, phrase.lemma.partition(" ")[2]) not in ("work", "light"):
        return None
    if helper not in {"gets", "get"} and bench.words.kind(verb.lemma, phrase.lemma.partition(" ")[2]) != "work":
        return None
    done = helper in {"was", "were", "been", "is", "are", "'s", "'re"}
    return Candidate(
        piece,
        piece.start,
        piece.end,
        "passive",
        phrase.lemma,
        verb.lemma,
        thing,
        "done" if done else "doing",
        (verb.at + 1, piece.end),
        fronted=thing,
    )
