"""A tool as the doer: "the feeler gauge won't go under", "straightedge is touching", "the plane takes it down".

Refuses "the meter is broken", "mine's older than the mailman" (the tool described).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.tools import tool_verb

_TAKES = frozenset({"takes", "take", "cuts", "brings", "lifts", "cleans", "does", "do", "knocks", "gets", "shaves"})
_MEETS = frozenset(
    {
        "goes",
        "go",
        "slides",
        "slide",
        "slips",
        "sits",
        "touches",
        "touching",
        "rocks",
        "fits",
        "drops",
        "shows",
        "says",
        "rides",
        "passes",
        "reads",
    }
)
_HELPS = frozenset(
    {"wo", "does", "do", "will", "'ll", "is", "'s", "just", "n't", "not", "only", "barely", "still", "can", "ca"}
)


def instrument(bench: Bench, piece: Piece) -> Candidate | None:
    """A tool whose work is known, and what it does or meets."""
    if piece.leans:
        return None
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None or thing.pronoun or thing.end >= piece.end:
        return None
    verb = tool_verb(bench, thing)
    if verb is None:
        return None
    at = thing.end
    while at < piece.end and bench.word(at) in _HELPS:
        at += 1
    if verb in {"measure", "check"}:
        if bench.word(at) not in _MEETS:
            return None
        return Candidate(
            piece, piece.start, piece.end, "instrument", verb, verb, None, "doing", (thing.end, thing.end), tool=thing
        )
    target = thing_at(bench, at + 1, piece.end) if bench.word(at) in _TAKES and at == thing.end else None
    if target is None:
        return None
    return Candidate(
        piece, piece.start, piece.end, "instrument", verb, verb, target, "doing", (target.end, piece.end), tool=thing
    )
