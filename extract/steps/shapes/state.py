"""The state a thing is in once the work is done: "hoop's off", "plates are apart", "new head's on".

Refuses "rim's out by 2 mm", "the tuner's off a shade", "the light's on" (no thing of the job), "it's in good shape".
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.grammar import PARTICLES
from extract.clauses.pieces import Piece
from extract.clauses.things import is_workable, thing_at
from extract.steps.candidate import Candidate

_STATES = frozenset({"off", "on", "in", "out", "apart", "together", "back", "through", "home"})
_MEASURED_BY = frozenset({"true", "line", "round", "square", "tune", "beat", "level", "balance", "flat", "shape"})
"""Behind "out of" these tell a fault: "the wheel is out of true"."""
_ENDS = frozenset({"", ".", ",", ";", "!", "and", "on", "at", "now", "then", "in", "for", "with", "again"})


def state(bench: Bench, piece: Piece) -> Candidate | None:
    """A thing, "is" and the particle that tells where the work has put it."""
    if piece.leans:
        return None
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None or not is_workable(bench, thing) or bench.word(thing.start) == "everything":
        return None
    at = thing.end
    if bench.word(at) not in {"'s", "is", "are", "'re"}:
        return None
    at += 1
    while at < piece.end and bench.word(at) in {"all", "now", "well", "finally", "nearly"}:
        at += 1
    first = at
    if bench.word(at) not in _STATES:
        return None
    at += 1
    if at < piece.end and bench.word(at) in PARTICLES and bench.word(first) == "back":
        at += 1
    if thing.pronoun and bench.word(at) != "with" and any(bench.doc[k].is_alpha for k in range(at, piece.end)):
        return None
    said = " ".join(bench.lower[first:at])
    if said == "back":
        return None
    behind = bench.word(at) if at < piece.end else ""
    if behind == "of" and bench.word(at + 1) in _MEASURED_BY:
        return None
    left = said == "out" and behind in {"the", "of"} and bench.tag(at + 1) != "CD"
    if said not in bench.words.states or not (left or behind in _ENDS):
        return None
    if said in {"in", "out"} and at < piece.end and behind not in {".", ","} and not left:
        return None
    return Candidate(
        piece,
        piece.start,
        piece.end,
        "state",
        bench.words.states[said],
        bench.words.states[said],
        thing,
        "done",
        (at, piece.end),
        fronted=thing,
    )
