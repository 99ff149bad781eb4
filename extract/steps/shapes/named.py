"""A thing named by itself as what is worked on next: "then both coupling caps", "parting bead next".

Refuses a thing that more is said of ("the bridge is maple"), people, hours and figures.
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, is_workable, kind_of, thing_at, with_whole
from extract.steps.candidate import Candidate

_MARKS = frozenset({"now", "next", "then", "first", "again", "here", "same", "way", "too", "as", "well"})


def named(bench: Bench, piece: Piece) -> Candidate | None:
    """A piece that holds a thing and nothing else, or a thing and "next"."""
    thing = heading(bench, piece)
    if thing is None or kind_of(bench, thing) == "tool":
        return None
    fresh = "new" in bench.lower[thing.start : thing.head]
    verb = "fit / replace" if fresh else "do"
    rest = (thing.end, piece.end)
    return Candidate(
        piece, piece.start, piece.end, "named", verb, "fit" if fresh else "do", thing, "doing", rest, fronted=thing
    )


def heading(bench: Bench, piece: Piece) -> Thing | None:
    """The thing that a piece only names, whether or not "now" or "next" stands by it; null where more is said."""
    if piece.leans or piece.joiner in {"or", "but"}:
        return None
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None or thing.pronoun or not is_workable(bench, thing):
        return None
    thing = with_whole(bench, thing, piece.end)
    behind = bench.word(thing.end)
    alone = all(not bench.doc[k].is_alpha or bench.word(k) in _MARKS for k in range(thing.end, piece.end))
    if not alone and behind not in {"next", "now"}:
        return None
    return None if bench.unit_kinds(thing.start, thing.end) else thing
