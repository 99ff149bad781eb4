"""The actions of a job."""

from spacy.tokens import Doc

from extract.spans import Action, Measured
from extract.trade import Trade


def find_steps(doc: Doc, measures: tuple[Measured, ...], trade: Trade) -> tuple[Action, ...]:
    """What was done, is being done, is planned or advised, in order of speaking."""
    return ()
