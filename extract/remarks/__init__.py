"""What is said beside figures and steps."""

from spacy.tokens import Doc

from extract.spans import Remarks
from extract.trade import Trade


def find_remarks(doc: Doc, trade: Trade) -> Remarks:
    """Cautions, materials, tools, follow-ups and doubts."""
    return Remarks()
