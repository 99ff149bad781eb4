"""A step in words: what it is called, what it is done to, and the instruction that tells it.

Of a step that several actions tell, those are put into words that read well; one that reads as no instruction at all
has no text, and is no step.
"""

from __future__ import annotations

from bisect import bisect_left

from extract.clauses.bench import Bench
from extract.clauses.cleaning import cleaned
from extract.clauses.pieces import Piece
from extract.clauses.things import name_of
from extract.spans import Action
from extract.steps.candidate import Candidate
from extract.steps.instruction import instruct, plain_instruction
from extract.steps.judged import reads_well
from extract.steps.merge import Group
from extract.steps.naming import name_with_whole, named_work

_TAILS = frozenset({"till", "until", "before", "where", "while", "so", "when", "if", "once", "after"})
_BEING = frozenset({"is", "'s", "are", "'re", "was", "were"})
_LONGEST_TAIL = 14
_WORDED = 0.4
"""Chance under which a candidate tells where a step is, and is left out of its instruction."""
_MOST = 3
"""Verbs and objects named for a step that joins several actions."""


def to_action(bench: Bench, pieces: tuple[Piece, ...], group: Group) -> Action:
    """One step from the candidates that tell it."""
    likeliest = max(group, key=lambda one: one.chance)
    candidates = [one.candidate for one in group]
    verbs = [named_work(bench, c) for c in candidates if c.verb != "do"] or ["do"]
    verbs = list(dict.fromkeys(verbs))[:_MOST]
    names = list(dict.fromkeys(name_with_whole(bench, c) for c in candidates if c.meant is not None))[:_MOST]
    laid = [thing for c in candidates for thing in (c.laid, c.tool) if thing is not None]
    names += [name for thing in laid if (name := name_of(bench, thing)) not in names][:1]
    return Action(
        start=candidates[0].start,
        end=max(candidate.end for candidate in candidates),
        verb=" and ".join(verbs),
        object=" and ".join(names),
        mode=likeliest.candidate.mode,
        text=_text(bench, pieces, [one.candidate for one in group if one.chance >= _WORDED or one is likeliest]),
    )


def _text(bench: Bench, pieces: tuple[Piece, ...], group: list[Candidate]) -> str:
    parts: list[str] = []
    named: set[str] = set()
    for candidate in group:
        said = _worded(bench, pieces, candidate, frozenset(named))
        if not said or any(said.startswith(part) for part in parts):
            continue
        parts.append(said)
        if candidate.meant is not None:
            named.add(name_of(bench, candidate.meant))
    text = parts[0] if len(parts) == 1 else ", ".join(parts[:-1]) + ", then " + parts[-1] if parts else ""
    return text[:1].upper() + text[1:]


def _worded(bench: Bench, pieces: tuple[Piece, ...], candidate: Candidate, named: frozenset[str]) -> str:
    """The instruction as said with the clause that ends it, or the verb and the thing alone, or nothing."""
    said = instruct(bench, candidate, named)
    if reads_well(bench, candidate, said):
        return said + ("" if candidate.verb == "measure" else _tail(bench, pieces, candidate))
    plain = plain_instruction(bench, candidate)
    return plain if reads_well(bench, candidate, plain) else ""


def _tail(bench: Bench, pieces: tuple[Piece, ...], candidate: Candidate) -> str:
    """The clause behind an action that says how far or how long, where it is short."""
    index = bisect_left(pieces, candidate.end, key=lambda piece: piece.start)
    behind = pieces[index] if index < len(pieces) else None
    if behind is None or behind.joiner not in _TAILS or behind.sentence != candidate.piece.sentence:
        return ""
    if bench.word(behind.start - 1) in _BEING:
        return ""  # "a scratch across is | where it'll snap"
    end = _tail_end(bench, behind)
    if end - behind.start > _LONGEST_TAIL or (behind.joiner == "so" and not bench.begins_clause(behind.start + 1)):
        return ""
    return " " + cleaned(bench, behind.start, end, keep_first=True, present=True)


def _tail_end(bench: Bench, tail: Piece) -> int:
    """Where the tail's own clause ends: at the next subject, and without marks at the end of the breath."""
    for at in range(tail.start + 3, tail.end):
        breath = bench.cue[at] != bench.cue[at - 1] and not bench.narration.punctuated
        if breath or (bench.begins_clause(at) and bench.word(at - 1) not in {"that", "what", "how"}):
            return at
    return tail.end
