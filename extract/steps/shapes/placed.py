"""A thing named with its place and no verb, read past the tagger's slips: "cork pads under them", "candle on the sole".

The loosest reading of a laid thing: it takes whatever stands before the preposition for a thing. Refuses a piece with a
pronoun or a finite verb before the preposition.
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, is_workable, kind_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.complement import states
from extract.steps.phrase_words import phrase_words
from extract.steps.shapes.no_verb import ONTO
from extract.steps.shapes.tools import tool_verb

_LONGEST = 7
"""Tokens before the preposition; a longer run is a sentence."""
_TOLD = ("came", "went", "was", "were", "had", "got", "ran", "said")
_CLAUSAL = frozenset({"PRP", "MD", "VBZ", "VBG", "WP", "WDT", "WRB", "EX", "TO", "CC"})


def placed(bench: Bench, piece: Piece) -> Candidate | None:
    """What stands before the first preposition, laid to what stands behind it."""
    if piece.leans or piece.joiner in {"or", "but"}:
        return None
    at = next((k for k in range(piece.lead + 1, min(piece.end, piece.lead + _LONGEST)) if bench.word(k) in ONTO), None)
    if at is None or any(_is_clausal(bench, k) for k in range(piece.lead, at)):
        return None
    laid = thing_at(bench, piece.lead, at) or _by_place(bench, piece.lead, at)
    target = thing_at(bench, at + 1, piece.end)
    found = bench.word(piece.lead) in phrase_words().found_there or bench.word(piece.lead) in {"hang", "hold"}
    if found or laid is None or laid.pronoun or not is_workable(bench, laid):
        return None
    if laid.end < at and bench.word(laid.end) == "of":
        laid = thing_at(bench, laid.end + 1, at) or laid
    if target is not None and not target.pronoun and states(bench, target.end):
        return None  # "the weight on the going side | would go": a statement
    if target is None or not (target.pronoun or is_workable(bench, target)):
        return None
    work = tool_verb(bench, laid) or ("apply" if kind_of(bench, laid) == "material" else "fit")
    rest = (at, piece.end)
    return Candidate(piece, piece.start, piece.end, "placed", work, work, target, "doing", rest, tool=laid)


def _by_place(bench: Bench, start: int, end: int) -> Thing | None:
    """ "chalk on the belly": a word that the tagger calls a verb is a noun where a preposition follows it."""
    named = bench.doc[end - 1].is_alpha and bench.tag(end - 1) not in {"IN", "DT", "RB", "CD"}
    return Thing(start, end, end - 1) if named else None


def _is_clausal(bench: Bench, at: int) -> bool:
    return bench.tag(at) in _CLAUSAL or bench.word(at) in {"'s", "'re", "'ve", "'ll", "n't", "not", "no", *_TOLD}
