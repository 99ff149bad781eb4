"""A verb of work anywhere in a piece that nothing else reads: "there we are levelled with the straight edge".

Takes "wet rag get the bead off", "it's unplugged"; refuses a verb behind an article ("the waxed thread") and a denied
one.
"""

from __future__ import annotations

from extract.clauses.bench import Bench, Verb
from extract.clauses.pieces import Piece
from extract.clauses.things import is_workable, thing_at
from extract.record import Mode
from extract.steps.candidate import Candidate
from extract.steps.shapes.verb_phrase import verb_phrase

_MODES: dict[str, Mode] = {"past": "done", "ing": "doing", "base": "doing"}
_OTHERS = frozenset({"he", "she", "they", "somebody", "someone", "who", "whoever"})
_WOULD = frozenset({"'ll", "'d", "will", "would", "might", "could"})
_SHARES = frozenset({"quarter", "half", "full", "eighth"})
"""A quarter turn is no command to turn."""
_MODIFIERS = frozenset({"DT", "PRP$", "JJ", "CD", "POS"})


def stray(bench: Bench, piece: Piece) -> Candidate | None:
    """The first verb of work in the piece with its object, or the thing before it."""
    if piece.leans or any(bench.word(k) in {"n't", "not", "never"} for k in range(piece.start, piece.end)):
        return None
    verb = next((read for k in range(piece.lead, piece.end) if (read := _work(bench, k, piece.end)) is not None), None)
    if verb is None:
        return None
    if verb.form == "past" and any(_is_other(bench, k) for k in range(piece.lead, verb.at)):
        return None
    if _comes_of_it(bench, piece, verb):
        return None
    phrase = verb_phrase(bench, verb, piece.end)
    before = thing_at(bench, piece.lead, verb.at) if verb.form == "past" else None
    fronted = before if before is not None and not before.pronoun and is_workable(bench, before) else None
    thing = fronted or phrase.thing
    rest = (verb.at + 1, piece.end)
    return Candidate(
        piece,
        piece.start,
        piece.end,
        "stray",
        phrase.lemma,
        verb.lemma,
        thing,
        _MODES.get(verb.form, "doing"),
        rest,
        fronted=fronted,
        laid=phrase.tool,
    )


def _comes_of_it(bench: Bench, piece: Piece, verb: Verb) -> bool:
    """ "you'll pull the head through", "the weight would go clean through", "the hole's gone egg shaped"."""
    said = bench.lower[piece.lead : verb.at]
    return (said[-2:-1] == ("you",) and said[-1] in _WOULD) or not {"would", "gone"}.isdisjoint(said)


def _is_other(bench: Bench, at: int) -> bool:
    """True for a word that says that somebody else did it."""
    return bench.word(at) in _OTHERS or bench.words.nouns.get(bench.word(at)) == "people"


def _work(bench: Bench, at: int, end: int) -> Verb | None:
    modified = bench.tag(at - 1) in _MODIFIERS or bench.word(at - 1) in _SHARES
    if modified or at in bench.inside_term or bench.tag(at) in {"NNS", "VBZ", "CD"}:
        return None
    verb = bench.verb(at)
    if verb is None or verb.form == "s":
        return None
    particle = bench.word(at + 1) if at + 1 < end else ""
    known = bench.words.kind(verb.lemma, particle) == "work" or (
        bench.words.kind(verb.lemma) == "light" and verb.form == "base" and bench.takes_object(at + 1)
    )
    if verb.lemma in bench.words.damage_verbs and verb.form == "past":
        return None
    if not known or (bench.tag(at).startswith("NN") and not bench.takes_object(at + 1)):
        return None
    return verb
