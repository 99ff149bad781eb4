"""Numbers as they are said at a bench."""

from spacy.tokens import Doc

from extract.numbers.grammar import parse
from extract.spans import Number


def find_numbers(doc: Doc) -> tuple[Number, ...]:
    """All numbers of a narration in order, of measures or not."""
    return tuple(parsed.number for parsed in parse(doc)[1])
