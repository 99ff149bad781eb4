"""A verb whose "i" was left out: "shaving her down", "warmed the seat by the stove".

Refuses "swells up" (its subject was the tenon), "stands three foot one" (a description).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.steps.candidate import Candidate
from extract.steps.shapes.verb_phrase import verb_phrase

_HEADED = frozenset({",", ".", "now", "next", "then", "with"})
"""Behind an -ing form these make it a heading: "now crowning, with a file", "resewing, then"."""


def bare_participle(bench: Bench, piece: Piece) -> Candidate | None:
    """A piece that begins with an -ing form or a past form and names what it is done to."""
    if piece.leans:
        return None
    at = piece.lead
    while at < piece.end and bench.tag(at) == "RB":
        at += 1
    verb = bench.verb(at)
    if verb is None or at >= piece.end or verb.form not in ("ing", "past"):
        return None
    rest = verb.at + 1
    if bench.word(rest) in {"is", "'s", "was"}:
        if verb.form != "ing" or bench.word(rest + 1) not in {"with", "done", "by", "next"}:
            return None
        rest += 1 + (bench.word(rest + 1) in {"done", "next"})
    phrase = verb_phrase(bench, verb, piece.end)
    carries_on = piece.joiner in {"and", "then"} and not bench.doc[piece.start].is_sent_start
    next_up = phrase.thing is not None and bench.word(phrase.thing.end) in {"next", "now"}
    if next_up and phrase.thing is not None and phrase.thing.start == verb.at + 1 == phrase.thing.head:
        return None
    works = bench.words.kind(verb.lemma) == "work"
    headed = works and verb.form == "ing" and bench.word(verb.at + 1) in _HEADED
    if phrase.thing is None and not phrase.placed and not (carries_on and works) and not headed:
        return None
    if (
        not carries_on
        and verb.form == "past"
        and bench.tag(verb.at + 1) in {"IN", "CC", ""}
        and phrase.lemma == verb.lemma
    ):
        return None
    return Candidate(
        piece,
        piece.start,
        piece.end,
        "bare participle",
        phrase.lemma,
        verb.lemma,
        phrase.thing,
        "doing" if verb.form == "ing" else "done",
        (rest, piece.end),
        laid=phrase.tool,
        own_subject=not carries_on,
    )
