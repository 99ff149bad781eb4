"""The work behind a frame: "what i do is take the pins out", "the trick is to warm it", "next job is cleaning it".

Refuses "what we're after is seven" (no verb of work behind the frame).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.record import Mode
from extract.steps.candidate import Candidate
from extract.steps.shapes.verb_phrase import verb_phrase

_FRAMES = frozenset(
    {
        "what",
        "all",
        "trick",
        "thing",
        "job",
        "step",
        "way",
        "idea",
        "plan",
        "order",
        "move",
        "case",
        "matter",
        "question",
        "time",
        "bit",
        "stage",
        "secret",
        "point",
    }
)
_LONGEST_FRAME = 9


def framed(bench: Bench, piece: Piece) -> Candidate | None:
    """A frame that ends on "is", "is to", "of" or "to", and a verb of work."""
    if piece.leans:
        return None
    just = bench.word(piece.lead) in {"it", "that", "then"} and any(
        w in {"just", "only", "all"} for w in bench.lower[piece.start : piece.lead + 4]
    )
    seen = just
    for at in range(piece.start, min(piece.end, piece.start + _LONGEST_FRAME)):
        seen = seen or bench.word(at) in _FRAMES
        ends = {"just", "only", "all"} if just else {"is", "'s", "was", "of", "to"}
        if not seen or bench.word(at) not in ends or bench.word(at + 1) in {"to", "n't", "not"}:
            continue
        verb = bench.verb(at + 1) if at + 1 < piece.end else None
        told = verb is not None and verb.form == "past" and "what" in bench.lower[piece.start : piece.lead + 1]
        if (
            verb is None
            or not (told or verb.form in ("base", "ing"))
            or bench.words.kind(verb.lemma) in ("idle", "unknown")
        ):
            continue
        if just and verb.form != "ing":
            continue
        phrase = verb_phrase(bench, verb, piece.end)
        mode: Mode = "doing" if bench.word(piece.lead) in {"what", "all"} else "advice"
        return Candidate(
            piece,
            piece.start,
            piece.end,
            "framed",
            phrase.lemma,
            verb.lemma,
            phrase.thing,
            mode,
            (verb.at + 1, piece.end),
            laid=phrase.tool,
        )
    return None
