"""The work told of the thing: "the rod gets backed off", "the seat's been cleaned", "the heart must be opened".

Refuses "neck's stamped 1976" (a description), "it was glued by the owner" (somebody else's work), "the hole's worn".
"""

from __future__ import annotations

from extract.clauses.bench import Bench, Verb
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, extent, is_workable, thing_at
from extract.record import Mode
from extract.steps.candidate import Candidate
from extract.steps.shapes.phrase import VerbPhrase
from extract.steps.shapes.verb_phrase import verb_phrase

_GETS = frozenset({"gets", "get", "getting"})
_DONE = frozenset({"is", "are", "'s", "'re", "was", "were", "been"})
_OUGHT = frozenset({"must", "should", "can", "to"})
_BETWEEN = frozenset({"all", "being", "now"})


def passive(bench: Bench, piece: Piece) -> Candidate | None:
    """A thing, "gets" or a form of "be", and a past form of a verb of work; or "needs" and an -ing form."""
    thing = thing_at(bench, piece.lead, piece.end)
    if piece.leans or thing is None or not (is_workable(bench, thing) or thing.pronoun):
        return None
    read = _helper(bench, thing.end) or _helper(bench, extent(bench, thing, piece.end))
    if read is None:
        return None
    helper, at = read
    while at < piece.end and (
        bench.tag(at) == "RB"
        or bench.word(at) in _BETWEEN
        or (helper in _GETS and bench.tag(at) == "NN" and bench.tag(at + 1) in {"VBN", "VBD"})
    ):
        if bench.word(at) in {"n't", "not", "never"}:
            return None
        at += 1
    verb = bench.verb(at) if at < piece.end else None
    if verb is None or not _fits(bench, helper, verb):
        return None
    phrase = verb_phrase(bench, verb, piece.end)
    if not _is_this_job(bench, piece, thing, helper, phrase):
        return None
    mode: Mode = "done" if helper in _DONE else "advice" if helper in _OUGHT else "doing"
    mode = "planned" if helper == "needs" else mode
    rest = (verb.at + 1, piece.end)
    return Candidate(
        piece, piece.start, piece.end, "passive", phrase.lemma, verb.lemma, thing, mode, rest, fronted=thing
    )


def _helper(bench: Bench, at: int) -> tuple[str, int] | None:
    """What ties the thing to its verb, and the token behind it."""
    word = bench.word(at)
    if word in {"have", "'ve", "has", "'s"} and bench.word(at + 1) == "been":
        return "been", at + 2
    if word in {"must", "should", "can"} and bench.word(at + 1) == "be":
        return word, at + 2
    if word in {"has", "have", "needs", "need", "wants", "ought"} and bench.word(at + 1) == "to":
        return ("to", at + 3) if bench.word(at + 2) == "be" else None
    if word in {"needs", "need", "wants", "want"}:
        return "needs", at + 1
    return (word, at + 1) if word in _GETS | _DONE else None


def _fits(bench: Bench, helper: str, verb: Verb) -> bool:
    if helper == "needs":
        return verb.form == "ing"
    if verb.form != "past" and bench.word(verb.at) not in bench.words.same_past:
        return False
    plain_past = bench.tag(verb.at) == "VBD" and not bench.word(verb.at).endswith("ed")
    return not plain_past or helper in {"was", "were", "is", "are"}


def _is_this_job(bench: Bench, piece: Piece, thing: Thing, helper: str, phrase: VerbPhrase) -> bool:
    """False for descriptions, faults and what others did."""
    lemma, _, particle = phrase.lemma.partition(" ")
    kind = bench.words.kind(lemma, particle)
    if helper == "'s" and bench.takes_object(phrase.at + 1):
        return False
    bare_plural = bench.tag(thing.start) == "NNS" and thing.end - thing.start == 1 and piece.joiner == "but"
    if helper in _GETS:
        known = kind in ("work", "light") or bench.words.kind(phrase.said) in ("work", "light")
        return known and not bare_plural
    if kind != "work" or phrase.said in bench.words.damage_verbs:
        return False
    if thing.pronoun and helper != "been":
        return False
    if helper == "'s" and bench.tag(phrase.at + 1) == "CD":
        return False
    if phrase.said in {"turn", "go"} and bench.word(phrase.at + 1) in {"to", "into"}:
        return False  # "the old oil's turned to toffee"
    if helper in {"was", "were"}:
        return "by" not in bench.lower[phrase.at : piece.end] and bench.tag(phrase.at - 1) != "RB"
    return True
