"""No verb at all: "grease in the cups", "axle through", "black marker over the tops", "lockring, 40 Nm".

Refuses "rear wheel off a commuter" (where it comes from), "water in the case" (found there), "a hair over 7 64ths".
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.grammar import PARTICLES
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, is_workable, kind_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.tools import figure_verb, tool_verb

_ONTO = frozenset(
    {
        "on",
        "in",
        "over",
        "along",
        "around",
        "round",
        "under",
        "into",
        "onto",
        "between",
        "across",
        "to",
        "through",
        "behind",
        "against",
        "underneath",
        "inside",
        "up",
        "down",
        "at",
    }
)
_TAIL = frozenset(
    {
        "",
        ".",
        ",",
        ";",
        "!",
        "and",
        "again",
        "nice",
        "not",
        "just",
        "only",
        "snug",
        "with",
        "by",
        "tight",
        "now",
        "first",
        "for",
        "till",
    }
)

_DOSES = frozenset({"little", "more", "some", "another", "fresh", "bit", "touch", "dab", "drop", "drops", "lick"})


def verbless(bench: Bench, piece: Piece) -> Candidate | None:
    """A tool or material laid to a thing, or a thing and where it was put."""
    if piece.leans or any(_is_finite(bench, k) for k in range(piece.lead, piece.end)):
        return None
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None:
        return _returned(bench, piece)
    if (thing.pronoun and bench.word(thing.head) not in {"one", "ones"}) or not is_workable(bench, thing):
        return None
    thing = _of(bench, thing, piece.end)
    return (
        _laid_to(bench, piece, thing)
        or _figured(bench, piece, thing)
        or _put(bench, piece, thing)
        or _dosed(bench, piece, thing)
    )


def _figured(bench: Bench, piece: Piece, thing: Thing) -> Candidate | None:
    """ "tyre up to 80 psi", "glue pot at 140 degrees": the figure tells the work."""
    at = thing.end
    if bench.word(at) not in {"up", "to", "at", "on", "down", "back"}:
        return None
    verb = figure_verb(bench, at, piece.end)
    if verb not in {"tighten", "inflate", "heat"}:
        return None
    return Candidate(
        piece, piece.start, piece.end, "verbless", verb, verb, thing, "doing", (at, piece.end), fronted=thing
    )


def _returned(bench: Bench, piece: Piece) -> Candidate | None:
    """ "back in its box", "and back on the bench"."""
    at = next((k for k in range(piece.start, piece.lead + 1) if bench.word(k) == "back"), piece.end)
    if bench.word(at + 1) not in {"in", "on", "into", "onto", "to"} or thing_at(bench, at + 2, piece.end) is None:
        return None
    return Candidate(piece, piece.start, piece.end, "verbless", "refit", "put it", None, "doing", (at, piece.end))


def _is_finite(bench: Bench, at: int) -> bool:
    finite = bench.tag(at) in {"VBZ", "VBD", "VBP", "MD"} or bench.word(at) == "'s"
    return (
        finite and bench.word(at) not in bench.words.work and bench.term_kind[at] is None and bench.tag(at - 1) != "CD"
    )


def _dosed(bench: Bench, piece: Piece, thing: Thing) -> Candidate | None:
    """ "a smear of the proper grease", "then pipe clamps": a dose or a tool tells what is done to the thing at hand."""
    verb = tool_verb(bench, thing)
    small = bench.tag(thing.start) in {"DT", "CD"} or bench.word(thing.start) in _DOSES
    measured = bool({"of", *_DOSES} & set(bench.lower[thing.start : thing.head]))
    dose = thing.start < thing.head and small and measured
    then = "then" in bench.lower[piece.start : piece.lead] and kind_of(bench, thing) in {"tool", "material"}
    if verb is None or not (dose or then) or bench.word(thing.end) in {"of"}:
        return None
    return Candidate(
        piece, piece.start, piece.end, "verbless", verb, verb, None, "doing", (thing.end, piece.end), tool=thing
    )


def _of(bench: Bench, thing: Thing, end: int) -> Thing:
    """ "a smear of the proper grease" is grease."""
    if bench.word(thing.end) == "of":
        inner = thing_at(bench, thing.end + 1, end)
        if inner is not None and not inner.pronoun:
            return Thing(thing.start, inner.end, inner.head)
    return thing


def _laid_to(bench: Bench, piece: Piece, thing: Thing) -> Candidate | None:
    """A tool or material and what it is laid to."""
    verb = tool_verb(bench, thing)
    at = thing.end
    while at < piece.end and bench.word(at) in {"all", "right", "just", "straight"}:
        at += 1
    if at < piece.end and bench.word(at) in _ONTO:
        target = thing_at(bench, at + 1, piece.end)
        if (
            target is not None
            and is_workable(bench, target)
            and (verb or kind_of(bench, thing) in {"tool", "material"})
        ):
            return Candidate(
                piece,
                piece.start,
                piece.end,
                "verbless",
                verb or _plain(bench, thing),
                verb or _plain(bench, thing),
                target,
                "doing",
                (at, piece.end),
                tool=thing,
            )
    return None


def _is_amount(bench: Bench, at: int, end: int) -> bool:
    """ "bob down a turn and a half", "heads off, ten lugs": a count or measure behind."""
    thing = thing_at(bench, at, end)
    return bench.tag(at) == "CD" or (thing is not None and kind_of(bench, thing) == "measure")


def _plain(bench: Bench, thing: Thing) -> str:
    return "use" if kind_of(bench, thing) == "tool" else "apply"


def _put(bench: Bench, piece: Piece, thing: Thing) -> Candidate | None:
    """A thing and the particle that says where it was put."""
    at = thing.end
    if at >= piece.end or bench.word(at) not in PARTICLES:
        return None
    first = at
    at += 1
    if at < piece.end and bench.word(at) in PARTICLES and bench.word(first) == "back":
        at += 1
    said = " ".join(bench.lower[first:at])
    behind = bench.word(at) if at < piece.end else ""
    fresh = bench.word(thing.start) in {"new", "clean", "fresh", "back"} or bench.word(first) == "back"
    if said not in bench.words.states or (behind not in _TAIL and not fresh and not _is_amount(bench, at, piece.end)):
        return None
    if thing.pronoun and bench.word(at) == "order":
        return None
    verb = tool_verb(bench, thing)
    if verb is not None and said in {"on", "over", "round", "around"}:
        return Candidate(
            piece, piece.start, piece.end, "verbless", verb, verb, None, "doing", (at, piece.end), tool=thing
        )
    placed = first == at - 1 and thing_at(bench, at, piece.end) is not None
    verb = bench.words.states[said]
    return Candidate(
        piece,
        piece.start,
        piece.end,
        "verbless",
        verb,
        verb,
        thing,
        "doing",
        (first if placed else at, piece.end),
        fronted=thing,
    )
