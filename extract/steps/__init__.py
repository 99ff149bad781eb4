"""The actions of a job.

A narration is cut into pieces (clauses), each piece is read by the first shape that fits, the signs for and against it
are weighed, neighbours that tell one step are joined, and the step is worded as an instruction.
"""

from __future__ import annotations

from spacy.tokens import Doc

from extract.clauses.bench import Bench
from extract.clauses.pieces import pieces_of
from extract.spans import Action, Measured
from extract.steps.evidence import step_weights
from extract.steps.gather import gather
from extract.steps.merge import merge
from extract.steps.order import in_order
from extract.steps.shapes.own_hand import own_hand as own_work
from extract.steps.wording import to_action
from extract.trade import Trade

__all__ = ["find_steps", "own_work"]


def find_steps(doc: Doc, measures: tuple[Measured, ...], trade: Trade) -> tuple[Action, ...]:
    """What was done, is being done, is planned or advised, in order of speaking. Linear in the number of tokens."""
    bench = Bench(doc, trade, measures)
    pieces = pieces_of(bench)
    groups = merge(bench, gather(bench, pieces), step_weights())
    actions = tuple(action for group in groups if (action := to_action(bench, pieces, group)).text)
    return in_order(bench, actions)
