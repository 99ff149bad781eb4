"""A tool or material laid to a thing, without a verb: "grease in the cups", "black marker over the tops".

Refuses "water in the case" (found there), "a hair over 7 64ths" (a figure).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, is_workable, kind_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.phrase_words import phrase_words
from extract.steps.shapes.dosed import is_dose_noun
from extract.steps.shapes.no_verb import ONTO, leading_thing
from extract.steps.shapes.tools import tool_verb


def laid_to(bench: Bench, piece: Piece) -> Candidate | None:
    """A tool or material, a preposition and what it is laid to."""
    thing = leading_thing(bench, piece)
    if thing is None or thing.pronoun or bench.word(thing.start) in phrase_words().found_there:
        return None
    at = thing.end
    if bench.word(at) in {"now", "next", "then"}:
        dose = thing_at(bench, at + 1, piece.end)
        at = dose.end if dose is not None and is_dose_noun(bench, dose) else at
    while at < piece.end and bench.word(at) in {"all", "right", "just", "straight"}:
        at += 1
    target = thing_at(bench, at + 1, piece.end) if at < piece.end and bench.word(at) in ONTO else None
    if target is None or not is_workable(bench, target):
        return None
    verb = tool_verb(bench, thing)
    kind = kind_of(bench, thing)
    fresh = bench.word(thing.start) in {"new", "fresh"} and kind_of(bench, thing) != "damage"
    if verb is None and fresh:
        return Candidate(
            piece,
            piece.start,
            piece.end,
            "laid to",
            "fit / replace",
            "fit",
            thing,
            "doing",
            (thing.end, piece.end),
            fronted=thing,
        )
    if verb is None and kind not in {"tool", "material"} and not _stands_on(bench, thing, at, target):
        return None
    work = verb or ("apply" if kind == "material" else "use")
    return Candidate(piece, piece.start, piece.end, "laid to", work, work, target, "doing", (at, piece.end), tool=thing)


def _stands_on(bench: Bench, thing: Thing, at: int, target: Thing) -> bool:
    """ "rocker on three frets": a thing in no list, on a part."""
    single = thing.end - thing.start == 1 and bench.begins_breath(thing.start)
    return single and bench.word(at) in {"on", "over", "across"} and kind_of(bench, target) == "part"
