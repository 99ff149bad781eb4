"""A thing and the tool for it, without a verb: "the notches with a round file", "beam with 400 paper".

Also "here's the levelling beam", "three strokes of the file". Refuses "a box with a lid" (no tool).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, is_workable, kind_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.no_verb import leading_thing
from extract.steps.shapes.tools import tool_verb
from extract.steps.shapes.verb_phrase import verb_phrase

_STROKES = frozenset(
    {"stroke", "strokes", "pass", "passes", "swipe", "swipes", "lick", "touch", "couple", "few", "dose"}
)


def with_tool(bench: Bench, piece: Piece) -> Candidate | None:
    """A thing, "with" or "by", and a tool whose work is known; or a tool shown, or strokes of it."""
    if piece.leans or piece.joiner in {"or", "but"}:
        return None
    if bench.word(piece.lead) in {"here", "now", "so"} and bench.word(piece.lead + 1) in {"'s", "comes"}:
        return _shown(bench, piece)
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None or thing.pronoun:
        return None
    if bench.word(thing.head) in _STROKES and bench.word(thing.end) == "of":
        tool = thing_at(bench, thing.end + 1, piece.end)
        return _candidate(bench, piece, None, tool, tool.end if tool else piece.end)
    verb = bench.verb(thing.end + 1) if bench.word(thing.end) == "to" else None
    known = tool_verb(bench, thing) is not None or kind_of(bench, thing) == "tool"
    if verb is not None and (known or is_workable(bench, thing)) and bench.words.kind(verb.lemma) != "idle":
        phrase = verb_phrase(bench, verb, piece.end)
        lemma, _, particle = phrase.lemma.partition(" ")
        if bench.words.kind(lemma, particle) == "work" and (known or phrase.thing is not None):
            rest = (verb.at + 1, piece.end)
            return Candidate(
                piece, piece.start, piece.end, "with tool", phrase.lemma, verb.lemma, phrase.thing, "doing", rest
            )
    if leading_thing(bench, piece) is None or bench.word(thing.end) != "with":
        return None
    tool = thing_at(bench, thing.end + 1, piece.end)
    return _candidate(bench, piece, thing, tool, tool.end if tool else piece.end)


def _shown(bench: Bench, piece: Piece) -> Candidate | None:
    tool = thing_at(bench, piece.lead + 2, piece.end)
    verb = tool_verb(bench, tool) if tool is not None else None
    if verb in {None, "measure", "check", "tighten"}:
        return None
    return _candidate(bench, piece, None, tool, piece.end)


def _candidate(bench: Bench, piece: Piece, thing: Thing | None, tool: Thing | None, end: int) -> Candidate | None:
    verb = tool_verb(bench, tool) if tool is not None else None
    if verb is None:
        return None
    rest = (end, piece.end)
    return Candidate(piece, piece.start, piece.end, "with tool", verb, verb, thing, "doing", rest, tool=tool)
