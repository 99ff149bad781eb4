"""Narrations read as far as measures, with the rules that gave each finding."""

from __future__ import annotations

from collections.abc import Sequence

from spacy.tokens import Doc

from extract.measures import find_measures
from extract.numbers import find_numbers
from extract.quantities import find_quantities
from extract.spans import Measured
from extract.trade import guess_trade, load_trade
from tests.extract.narrations import transcript_of
from tests.extract.pipes import parsed


def measures_of(lines: Sequence[str], trade: str | None = None) -> tuple[Doc, tuple[Measured, ...]]:
    """The document of some lines, one cue a line, and its measures; the trade is guessed where none is given."""
    transcript = transcript_of(lines)
    words = load_trade(trade or guess_trade(transcript.text))
    doc = parsed(transcript, words)
    return doc, find_measures(doc, find_quantities(doc, find_numbers(doc), words), words)


def quote(doc: Doc, measure: Measured) -> str:
    """The words of a figure."""
    return doc[measure.quantity.start : measure.quantity.end].text
