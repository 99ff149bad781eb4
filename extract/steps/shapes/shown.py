"""Work shown as done: "that's the frets levelled", "that's the hoop off", "strings slackened, bridge out".

Refuses "that's the old bridge" (nothing done), "the customer's neck glued" with a doer behind "by".
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.grammar import PARTICLES
from extract.clauses.pieces import Piece
from extract.clauses.things import is_workable, thing_at, with_whole
from extract.steps.candidate import Candidate
from extract.steps.shapes.verb_phrase import verb_phrase


def shown(bench: Bench, piece: Piece) -> Candidate | None:
    """A thing and a past form or a state, alone or behind "that's"."""
    if piece.leans:
        return None
    at = piece.lead
    pointed = bench.word(at) in {"that", "there"} and bench.word(at + 1) in {"'s", "is"}
    if pointed:
        at += 2
    thing = thing_at(bench, at, piece.end)
    thing = with_whole(bench, thing, piece.end) if thing is not None else None
    if thing is None or not is_workable(bench, thing) or (thing.pronoun and not pointed):
        return None
    behind = thing.end
    while behind < piece.end and bench.tag(behind) == "RB" and bench.word(behind) not in PARTICLES:
        behind += 1
    if behind >= piece.end:
        return None
    state = bench.word(behind)
    if (
        pointed
        and state in bench.words.states
        and state in {"off", "on", "in", "out", "apart", "together", "back"}
        and not any(bench.doc[k].is_alpha for k in range(behind + 1, piece.end))
    ):
        verb = bench.words.states[state]
        return Candidate(
            piece, piece.start, piece.end, "shown", verb, verb, thing, "done", (behind + 1, piece.end), fronted=thing
        )
    verb_here = bench.verb(behind)
    if verb_here is None or verb_here.form != "past" or verb_here.lemma in bench.words.idle:
        return None
    if not pointed and verb_here.lemma in bench.words.damage_verbs:
        return None
    if bench.takes_object(behind + 1) or bench.is_noun(behind + 1) or "by" in bench.lower[behind : piece.end]:
        return None
    phrase = verb_phrase(bench, verb_here, piece.end)
    if bench.words.kind(verb_here.lemma, phrase.lemma.partition(" ")[2]) != "work":
        return None
    return Candidate(
        piece,
        piece.start,
        piece.end,
        "shown",
        phrase.lemma,
        verb_here.lemma,
        thing,
        "done",
        (behind + 1, piece.end),
        fronted=thing,
    )
