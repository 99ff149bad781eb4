"""What all pieces without a verb share: they begin with a thing and hold no finite verb."""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, is_workable, thing_at, with_whole

ONTO = frozenset(
    {"on", "in", "over", "along", "around", "round", "under", "into", "onto", "between", "across", "to", "through"}
    | {"behind", "against", "underneath", "inside", "up", "down", "at"}
)


def leading_thing(bench: Bench, piece: Piece) -> Thing | None:
    """The thing that a piece without a verb begins with, or null where there is a verb or no thing.

    "a smear of the proper grease" is grease.
    """
    if piece.leans or any(_is_finite(bench, k) for k in range(piece.lead, piece.end)):
        return None
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None or not is_workable(bench, thing):
        return None
    if thing.pronoun and bench.word(thing.head) not in {"one", "ones"}:
        return None
    return _content(bench, thing, piece.end)


def _content(bench: Bench, thing: Thing, end: int) -> Thing:
    whole = with_whole(bench, thing, end)
    if whole.end == thing.end:
        return thing
    inner = thing_at(bench, thing.end + 1, end)
    return thing if inner is None else Thing(thing.start, inner.end, inner.head)


def _is_finite(bench: Bench, at: int) -> bool:
    finite = bench.tag(at) in {"VBZ", "VBD", "VBP", "MD"} or bench.word(at) == "'s"
    named = bench.term_kind[at] is not None or (bench.tag(at) == "VBZ" and bench.plural_lead(at))
    return finite and not named and bench.word(at) not in bench.words.work and bench.tag(at - 1) != "CD"
