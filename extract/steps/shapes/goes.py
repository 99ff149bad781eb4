"""Where a thing goes: "everything else goes in the cleaner", "the hands come off", "the locknut goes to 17 Nm".

Refuses "the play goes" (nowhere), "a business card goes in" (a comparison), "the pitch goes up a bit" (no thing).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.grammar import PARTICLES
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, extent, is_plural, is_workable, kind_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.tools import container_verb, tool_verb

_HANDLED = frozenset(
    {"slides", "slips", "drops", "lifts", "pulls", "pops", "swings", "peels", "screws", "unscrews", "clips"}
)
"""What a thing is said to do when a hand does it: "the hand pulls straight up"."""
_MOVES = _HANDLED | {"going", "coming", "gone", "goes", "go", "comes", "come", "went", "came"}
_COMES = frozenset({"comes", "come", "came", "coming"})
_BEING = frozenset({"is", "are", "'s", "'re"})
_HAVING = frozenset({"has", "have", "'s", "'ve"})
_PLACES = PARTICLES | {"into", "onto", "to", "between", "against", "inside", "behind", "underneath", "beside"}
_OUT = frozenset({"off", "out", "away", "apart"})
_THAT = frozenset({"it", "this", "that", "them", "these"})


def goes(bench: Bench, piece: Piece) -> Candidate | None:
    """A thing, a verb of moving and where to."""
    if piece.leans:
        return None
    thing = thing_at(bench, piece.lead, piece.end)
    if bench.word(piece.lead) == "goes" and bench.tag(piece.lead) == "VBZ" and bench.word(piece.lead + 1) in _PLACES:
        behind = (piece.lead + 1, piece.end)
        return Candidate(piece, piece.start, piece.end, "goes", "put", "put", None, "doing", behind)
    if thing is None or not is_workable(bench, thing) or bench.word(thing.start) == "nothing":
        return None
    if bench.word(thing.start) in {"a", "an"} and bench.word(thing.end) != "of" and kind_of(bench, thing) != "material":
        return None
    at = thing.end if bench.word(thing.end) in _MOVES | _BEING | _HAVING else extent(bench, thing, piece.end)
    while bench.tag(at) == "RB" and bench.word(at) not in PARTICLES:
        at += 1
    come = bench.word(at) in _BEING and bench.word(at + 1) in {"going", "coming"}
    gone = bench.word(at) in _HAVING and bench.word(at + 1) in {"come", "gone"}
    if come or gone:
        at += 1
    if bench.word(at) not in _MOVES or at >= piece.end:
        return None
    place = at + 1
    while place < piece.end and bench.word(place) in {"straight", "right", "nicely", "just"}:
        place += 1
    if place >= piece.end or bench.word(place) not in _PLACES:
        return None
    if bench.lower[place : place + 3] == ("back", "to", "work") or _is_outcome(bench, thing, bench.word(at), place + 1):
        return None
    word = bench.word(at)
    word_is_past = word in _HANDLED | {"went", "came"}
    if word in {"go", "come"} and not gone and not is_plural(bench, thing):
        return None
    purpose = piece.joiner == "so" and bench.word(place) not in _OUT
    if thing.pronoun and (word_is_past or purpose or bench.word(at - 1) == "only"):
        return None
    if bench.word(place) == "to" and bench.tag(place + 1) not in {"CD", "DT"}:
        return None
    if bench.word(place) == "to" and bench.tag(place + 1) == "CD":
        verb = said = "set"
        rest = place
    elif word in _HANDLED:
        verb = said = bench.doc[at].lemma_.lower()
        rest = place
    elif bench.word(place) in _OUT or word in _COMES:
        verb = said = bench.words.states.get(bench.word(place), "take out")
        rest = place + 1
        # "the bridge is coming off it": off what, the instruction need not say.
        rest += bench.word(rest) in _THAT and (rest + 1 >= piece.end or bench.doc[rest + 1].is_punct)
    else:
        said, rest = "put", place
        verb = container_verb(bench, place, piece.end) or said
    done = gone or word in {"went", "came"}
    return Candidate(
        piece,
        piece.start,
        piece.end,
        "goes",
        verb,
        said,
        thing,
        "done" if done else "doing",
        (rest, piece.end),
        fronted=thing,
    )


def _is_outcome(bench: Bench, thing: Thing, word: str, behind: int) -> bool:
    """ "the prints came out black", "that's come out eight point two", "the meter's coming down": what was seen."""
    if word not in _COMES:
        return False
    told = bench.tag(behind) in {"CD", "JJ"} or bench.word(behind) in {"at", "like", "as", "all", "by"}
    return told or tool_verb(bench, thing) == "measure"
