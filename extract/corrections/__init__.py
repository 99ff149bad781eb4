"""Statements taken back."""

from spacy.tokens import Doc

from extract.spans import Measured, Takeback
from extract.trade import Trade


def find_corrections(doc: Doc, measures: tuple[Measured, ...], trade: Trade) -> tuple[Takeback, ...]:
    """Slips, later corrections and retractions of earlier sessions, in order."""
    return ()
