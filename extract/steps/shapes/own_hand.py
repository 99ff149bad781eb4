"""The speaker's own work: "i'm backing off the hooks", "I've squared it on the plate", "which I've trimmed by 2 mm".

Refuses "i can live with that" (no work), "i didn't glue it" (not done), "i was sanding when he rang" (told, not done).
"""

from __future__ import annotations

from extract.clauses.bench import Bench, Verb
from extract.clauses.pieces import Piece
from extract.record import Mode
from extract.steps.candidate import Candidate
from extract.steps.shapes.verb_phrase import verb_phrase

_AUXILIARY_PAIRS = {
    ("going", "to"): "plan",
    ("gon", "na"): "plan",
    ("want", "to"): "plan",
    ("need", "to"): "plan",
    ("have", "to"): "plan",
    ("got", "to"): "plan",
    ("got", "ta"): "plan",
    ("ought", "to"): "plan",
    ("about", "to"): "plan",
    ("get", "to"): "plan",
    ("like", "to"): "habit",
    ("tend", "to"): "habit",
    ("prefer", "to"): "habit",
    ("love", "to"): "habit",
    ("used", "to"): "used",
    ("had", "to"): "past",
    ("managed", "to"): "past",
    ("ended", "up"): "past",
    ("went", "ahead"): "past",
    ("go", "ahead"): "now",
    ("able", "to"): "now",
}
_WILL = frozenset({"will", "'ll", "shall"})
_BE = frozenset({"am", "'m", "are", "'re"})
_AUXILIARIES = (
    _WILL
    | _BE
    | {
        "have",
        "'ve",
        "had",
        "'d",
        "has",
        "can",
        "could",
        "might",
        "may",
        "would",
        "should",
        "must",
        "did",
        "do",
        "was",
        "were",
        "been",
        "be",
    }
)
_UNREAL = frozenset({"used", "was", "were", "might", "may", "could", "can"})


def own_hand(bench: Bench, piece: Piece) -> Candidate | None:
    """A piece whose subject is the speaker and whose verb is done, being done or planned."""
    at = piece.lead
    if bench.word(at) not in {"i", "we"} or (piece.leans and piece.joiner not in {"which", "when"}):
        return None
    read = _auxiliaries(bench, at + 1, piece.end)
    if read is None:
        return None
    said, at = read
    verb = bench.verb(at) if at < piece.end else None
    if verb is None and bench.word(at) in {"did", "do", "done"} and at < piece.end:
        verb = Verb(at, "do", "base" if bench.word(at) == "do" else "past", tagged=True)
    if verb is None or (piece.joiner == "when" and not said & {"'ve", "have"}):
        return None
    mode = _mode(said, verb)
    if mode is None:
        return None
    phrase = verb_phrase(bench, verb, piece.end)
    if bench.word(verb.at) == "got" and said & {"'ve", "have"} and phrase.lemma == "get":
        return None
    return Candidate(
        piece,
        piece.start,
        piece.end,
        "own hand",
        phrase.lemma,
        verb.lemma,
        phrase.thing,
        mode,
        (verb.at + 1, piece.end),
        laid=phrase.tool,
    )


def _auxiliaries(bench: Bench, at: int, end: int) -> tuple[frozenset[str], int] | None:
    """What stands between "i" and its verb, and where the verb is; null where it is denied."""
    said: set[str] = set()
    while at < end:
        pair = _AUXILIARY_PAIRS.get((bench.word(at), bench.word(at + 1)))
        if pair is not None:
            said.add(pair)
            at += 3 if pair in {"past", "now"} and bench.word(at + 2) == "and" else 2
        elif bench.word(at) in _AUXILIARIES and _helps(bench, at, end):
            said.add(bench.word(at))
            at += 1
        elif bench.words.knows(bench.word(at)) and bench.takes_object(at + 1):
            break
        elif bench.tag(at) == "RB" or bench.word(at) in {"just", "then", "now", "also", "always", "better", "first"}:
            if bench.word(at) in {"n't", "not", "never"}:
                return None
            said.add(bench.word(at))
            at += 1
        else:
            break
    return frozenset(said), at


def _helps(bench: Bench, at: int, end: int) -> bool:
    """True where an auxiliary has its verb behind it: not "i have the knife"."""
    behind = at + 1
    while behind < end and (bench.tag(behind) == "RB" or bench.word(behind) in {"just", "now"}):
        behind += 1
    return behind < end and (
        bench.verb(behind) is not None
        or bench.word(behind) in {"been", "be", "have", "got", "gon", "going", "about", "had", "able"}
    )


def _mode(said: frozenset[str], verb: Verb) -> Mode | None:
    if said & _UNREAL:
        return None
    if "plan" in said or said & _WILL:
        return "planned"
    if said & {"habit", "would", "should", "'d", "must", "always", "better"}:
        return "advice" if verb.form == "base" else None
    if said & {"have", "'ve", "has", "had", "past", "did"}:
        return "done"
    if said & _BE:
        return "doing" if verb.form == "ing" else None
    return "done" if verb.form == "past" else "doing" if verb.form == "base" else None
