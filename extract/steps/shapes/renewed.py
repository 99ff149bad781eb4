"""A new thing named for an old one, or a coat of something, without a verb: "and a new link", "cream next, two coats".

Refuses "a new customer" (nobody's part), "new for me" (no thing), "the new one is wider" (a verb).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, is_workable, kind_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.no_verb import leading_thing

_COATS = frozenset({"coat", "coats"})
_MARKS = frozenset({"next", "now", "first", "then"})


def renewed(bench: Bench, piece: Piece) -> Candidate | None:
    """A piece without a verb that begins with something new, or that tells of coats."""
    thing = leading_thing(bench, piece)
    if thing is None:
        return None
    coats = next((k for k in range(piece.lead, piece.end) if bench.word(k) in _COATS), None)
    if coats is not None:
        return _coated(bench, piece, thing, coats)
    behind = bench.word(thing.end)
    placed = behind in {"on", "in", "for", "off", "from", "of"}
    if "new" not in bench.lower[thing.start : thing.head] or placed or kind_of(bench, thing) == "abstract":
        return None
    rest = (thing.end, piece.end)
    return Candidate(
        piece, piece.start, piece.end, "renewed", "fit / replace", "fit", thing, "doing", rest, fronted=thing
    )


def _coated(bench: Bench, piece: Piece, thing: Thing, coats: int) -> Candidate | None:
    """ "a coat of carnauba", "hardener first two coats": what is laid on."""
    inner = thing_at(bench, coats + 2, piece.end) if bench.word(coats + 1) == "of" else None
    named = thing.head < coats and thing.end <= coats
    laid = inner if inner is not None and not inner.pronoun else thing if named else None
    if laid is None:
        marked = _MARKS & set(bench.lower[piece.start : piece.end])
        counted = bench.tag(thing.start) in {"CD", "DT"} and thing.head == coats
        if not (marked or counted) or (coats + 1 < piece.end and bench.word(coats + 1).isalpha()):
            return None
    elif not is_workable(bench, laid):
        return None
    rest = (piece.lead, piece.end)
    return Candidate(piece, piece.start, piece.end, "renewed", "apply / coat", "apply", laid, "doing", rest)
