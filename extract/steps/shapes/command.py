"""A command: "polish the pivot before you bush it", "then slide the bass foot back", "let's take the hoop off".

Refuses "glue's regular hide glue" (a noun), "looks too shiny" (no base form).
"""

from __future__ import annotations

from extract.clauses.bench import Bench, Verb
from extract.clauses.grammar import PARTICLES, grammar
from extract.clauses.pieces import Piece
from extract.record import Mode
from extract.steps.candidate import Candidate
from extract.steps.shapes.verb_phrase import verb_phrase

_ALSO_STATES = frozenset({"snug", "level", "true", "flush", "square", "dry", "smooth", "even", "open", "free", "stop"})
"""Alone between two stops these say how a thing is."""
_GENERAL = frozenset({"always", "before", "or", "if", "unless"})


def command(bench: Bench, piece: Piece) -> Candidate | None:
    """A piece that begins with a base form and no subject."""
    if piece.leans:
        return None
    at = piece.lead
    at += grammar().urgings.length_at(bench.lower, at)
    while at < piece.end and bench.tag(at) == "RB" and bench.word(at) not in PARTICLES | {"n't", "not", "never"}:
        at += 1
    if bench.tag(at) == "JJ" and bench.word(at + 1) in bench.words.work and bench.takes_object(at + 2):
        at += 1
    if (
        bench.word(at) in bench.words.tool_verbs
        and bench.tag(at + 1) == "IN"
        and bench.word(at) not in {"clamp", "file", "tape"}
    ):
        return None
    verb = bench.verb(at)
    pair = f"{bench.word(at)} {bench.word(at + 1)}"
    if bench.tag(at).startswith("NN") and pair in bench.words.work and bench.begins_breath(at):
        verb = Verb(at, bench.word(at), "base", tagged=True)
        return _candidate(bench, piece, verb, "doing")
    if verb is None or at >= piece.end or verb.lemma.split()[0] != bench.word(at):
        return None
    if (
        bench.word(at + 1) in {"and", "then", ",", ".", "", "first", "next", "again", "well"}
        and bench.words.kind(verb.lemma) == "work"
        and bench.tag(at) != "JJ"
    ):
        if bench.tag(at).startswith("NN") and bench.word(at + 1) in {"first", "next"} and piece.end - at <= 3:
            return None
        alone = bench.word(at + 1) in {",", ".", ""} and bench.begins_breath(at)
        if alone and (bench.word(at) in _ALSO_STATES or bench.tag(at) == "NNP"):
            return None
        if bench.term_kind[at] is not None and not verb.tagged and bench.word(at + 1) not in {"first", "again", "well"}:
            return None
    elif not verb.tagged or bench.tag(at) not in {"VB", "VBP"}:
        if not bench.is_bare_verb(at):
            return None
    elif bench.tag(at) == "VBP" and not bench.is_bare_verb(at):
        return None
    if at + 1 >= piece.end or (bench.word(at + 1) == "." and bench.tag(at).startswith("NN")):
        return None
    mode: Mode = "advice" if bench.word(piece.end) in _GENERAL or "always" in bench.lower[piece.start : at] else "doing"
    return _candidate(bench, piece, verb, mode)


def _candidate(bench: Bench, piece: Piece, verb: Verb, mode: Mode) -> Candidate:
    phrase = verb_phrase(bench, verb, piece.end)
    carries_on = piece.joiner in {"and", "then", "or", "so"} and not bench.doc[piece.start].is_sent_start
    return Candidate(
        piece,
        piece.start,
        piece.end,
        "command",
        phrase.lemma,
        verb.lemma,
        phrase.thing,
        mode,
        (verb.at + 1, piece.end),
        laid=phrase.tool,
        own_subject=not carries_on,
    )
