"""The thing gets its treatment: "rods get a drop of key oil", "the shank was given a light sanding".

Refuses "it gets weak as water" (no treatment), "the kid gets a new horn" (no work noun, no material).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import is_workable, thing_at, with_whole
from extract.steps.candidate import Candidate
from extract.steps.shapes.tools import figure_verb, tool_verb
from extract.steps.shapes.work_nouns import work_noun

_GETTING = (
    ("gets",),
    ("get",),
    ("got",),
    ("takes",),
    ("has", "had"),
    ("have", "had"),
    ("'s", "had"),
    ("'ve", "had"),
    ("is", "given"),
    ("was", "given"),
    ("were", "given"),
    ("are", "given"),
    ("wants",),
    ("needs",),
)


def receives(bench: Bench, piece: Piece) -> Candidate | None:
    """A thing, a verb of getting, and a work noun or a dose of material."""
    if piece.leans:
        return None
    thing = thing_at(bench, piece.lead, piece.end)
    if thing is None or not is_workable(bench, thing):
        return None
    thing = with_whole(bench, thing, piece.end)
    got = next((phrase for phrase in _GETTING if bench.lower[thing.end : thing.end + len(phrase)] == phrase), None)
    if got is None:
        return None
    at = thing.end + len(got)
    treatment = thing_at(bench, at, piece.end)
    if treatment is None or treatment.pronoun:
        return None
    inner = treatment
    if bench.word(treatment.end) == "of":
        inner = thing_at(bench, treatment.end + 1, piece.end) or treatment
    by_figure = figure_verb(bench, at, piece.end)
    verb = by_figure or work_noun(bench, treatment) or tool_verb(bench, inner)
    if verb is None or (got in {("wants",), ("needs",)} and work_noun(bench, treatment) is None):
        return None
    done = got[-1] in {"had", "given", "got"}
    return Candidate(
        piece,
        piece.start,
        piece.end,
        "receives",
        verb,
        "give",
        thing,
        "done" if done else "doing",
        (at, piece.end),
        fronted=thing,
    )
