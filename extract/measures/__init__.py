"""What each quantity measures, of what, where and when."""

from spacy.tokens import Doc

from extract.spans import Measured, Quantity
from extract.trade import Trade


def find_measures(doc: Doc, quantities: tuple[Quantity, ...], trade: Trade) -> tuple[Measured, ...]:
    """Quantities tied to attribute, item, place and phase, in order."""
    return ()
