"""The work named by a noun: "a quick wipe with the rag", "three passes with the file", "quarter turn on the screw".

Refuses "a crack in the top" (a fault), "the plug in the wall" (a part).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, is_workable, thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.tools import tool_verb
from extract.steps.shapes.work_nouns import work_noun

_ONTO = frozenset(
    {"on", "over", "of", "along", "across", "round", "around", "to", "down", "between", "into", "at", "in", "for"}
)
_PASSES = frozenset(
    {
        "pass",
        "passes",
        "stroke",
        "strokes",
        "swipe",
        "swipes",
        "lick",
        "licks",
        "go",
        "tap",
        "taps",
        "squirt",
        "couple",
        "few",
    }
)


def nominal(bench: Bench, piece: Piece) -> Candidate | None:
    """A noun that names work, with a tool behind "with" or a thing behind "on"."""
    if (
        piece.leans
        or "'s" in bench.lower[piece.lead : piece.end]
        or any(
            bench.tag(k) in {"VBZ", "VBD", "VBP", "MD"} and bench.term_kind[k] is None
            for k in range(piece.lead, piece.end)
        )
    ):
        return None
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None or thing.pronoun or thing.end >= piece.end:
        return None
    tool = _with(bench, thing.end, piece.end)
    target = _target(bench, thing.end, piece.end)
    verb = work_noun(bench, thing)
    if verb is None and bench.word(thing.head) in _PASSES and tool is not None:
        verb = tool_verb(bench, tool)
    if verb is None and bench.word(thing.head) in {"turn", "turns"} and target is not None:
        verb = "turn"
    if verb is None and bench.word(thing.head) in {"touch", "tweak", "nudge"} and target is not None:
        verb = "adjust"
    if verb is None or (tool is None and target is None):
        return None
    return Candidate(piece, piece.start, piece.end, "nominal", verb, "give", target, "doing", (piece.lead, piece.end))


def _with(bench: Bench, start: int, end: int) -> Thing | None:
    for at in range(start, end):
        if bench.word(at) == "with":
            return thing_at(bench, at + 1, end)
    return None


def _target(bench: Bench, start: int, end: int) -> Thing | None:
    for at in range(start, end):
        if bench.word(at) == "with":
            return None
        if bench.word(at) in _ONTO:
            thing = thing_at(bench, at + 1, end)
            if thing is not None and is_workable(bench, thing):
                return thing
    return None
