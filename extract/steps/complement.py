"""How far the words behind a verb go on with what it asks for: object, places, measures, manner.

Takes "[slide] the bass foot back a sixteenth", "[press] it home with both thumbs", "[warm] the joint for two minutes";
stops before what another clause begins with: "[shim] the collar with brass | strike that five hundredths", "[bend] it
back | no sudden moves". Raw captions have no marks, so word order alone tells.
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.grammar import PARTICLES
from extract.clauses.things import kind_of, thing_at
from extract.steps.phrase_words import phrase_words

_ADVERBS = frozenset({"RB", "RBR", "RBS"})
_RESULTS = frozenset({"JJ", "JJR", "VBN", "RB"})
_PLACING = frozenset({"IN", "TO"})
_FINITE = frozenset({"VBZ", "VBP", "VBD", "MD"})


def complement_end(bench: Bench, start: int, end: int, objects: int = 1) -> int:
    """The token behind the last one that goes on with the verb before `start`; `objects` it may take yet."""
    at = start
    while at < end:
        here = _next(bench, start, at, end, objects)
        if here is None:
            return at
        behind, took_object = here
        objects -= took_object
        at = behind
    return end


def _next(bench: Bench, start: int, at: int, end: int, objects: int) -> tuple[int, bool] | None:
    """Where the phrase that begins at a token ends, and whether it is an object; null where the clause is over."""
    words, word = phrase_words(), bench.word(at)
    if word in words.tails:
        telling = bench.begins_clause(at + 1) and bench.lower[at + 1 : at + 3] != ("you", "know")
        return (end, False) if telling or word != "so" else None
    if word in {",", "-", "and", "or"}:
        inner = (
            _next(bench, start, at + 1, end, objects + 1) if at + 1 < end and _may_go_on(bench, at + 1, word) else None
        )
        return None if inner is None else (inner[0], False)
    measured = bench.measure_end(at)
    if measured is not None:
        return _with_vagueness(bench, min(measured, end), end), False
    if word == "to" and bench.tag(at + 1) == "VB" and at + 1 < end:
        return complement_end(bench, at + 2, end), False
    if bench.tag(at) == "RP":
        return at + 1, False
    if bench.tag(at) in _PLACING or word in words.places:
        return _placed(bench, at, end)
    if word in PARTICLES or (bench.tag(at) in _ADVERBS and word not in words.not_adverbs):
        return at + 1, False
    if bench.tag(at) in {"DT", "CD"} and bench.words.nouns.get(bench.word(at + 1)) == "measure" and at + 1 < end:
        return _with_vagueness(bench, at + 2 + (bench.word(at + 2) in {"turn", "turns"}), end), False
    thing = thing_at(bench, at, end)
    if thing is not None and at > start and states(bench, thing.end):
        return None  # "look under the glass | the top pivot's gone"
    if thing is not None:
        measure = kind_of(bench, thing) in {"measure", "time"} or bench.word(thing.start) in words.each
        if measure or objects > 0:
            turned = measure and bench.word(thing.end) in {"turn", "turns"}
            return _with_vagueness(bench, thing.end + turned, end), not measure
        return None
    if bench.tag(at) in _RESULTS and objects <= 0 and not bench.is_noun(at + 1):
        return at + 1, False
    if bench.tag(at) in {"CD", "JJ", "DT", "VBG", "PDT", "NN"} and objects > 0:
        return at + 1, False
    return None


def _with_vagueness(bench: Bench, at: int, end: int) -> int:
    """Behind "a sixteenth": "or so"."""
    vague = bench.word(at) == "or" and bench.word(at + 1) in {"so", "thereabouts", "two", "more", "less"}
    return min(at + 2 if vague else at, end)


def _placed(bench: Bench, at: int, end: int) -> tuple[int, bool] | None:
    """A preposition and what it stands before; a particle may stand alone."""
    behind = at + 1
    while behind < end and (bench.tag(behind) in _PLACING or bench.word(behind) in PARTICLES):
        behind += 1
    measured = bench.measure_end(behind) if behind < end else None
    if measured is not None:
        return min(measured, end), False
    thing = thing_at(bench, behind, end) if behind < end else None
    if thing is not None:
        return thing.end, False
    if behind < end and bench.tag(behind) in {"VBG", "CD", "JJ", "RB", "DT"}:
        return complement_end(bench, behind + 1, end), False
    return (behind, False) if bench.word(behind - 1) in PARTICLES else None


def _may_go_on(bench: Bench, at: int, joint: str) -> bool:
    """Behind a comma a place, a manner or a measure goes on, behind "and" another object does too."""
    if bench.measure_end(at) is not None or bench.word(at) in phrase_words().places or bench.tag(at) in {"IN", "CD"}:
        return True
    if joint in {"and", "or"}:
        return not bench.begins_clause(at) and thing_at(bench, at, len(bench)) is not None
    return bench.tag(at) in _ADVERBS and bench.word(at) not in phrase_words().not_adverbs


def states(bench: Bench, at: int) -> bool:
    """True where a finite verb stands behind a noun phrase, so that the phrase is what a statement is about."""
    return bench.word(at) in phrase_words().being or (bench.tag(at) in _FINITE and bench.verb(at) is not None)
