"""Numbers as they are said at a bench."""

from __future__ import annotations

from typing import TYPE_CHECKING

from extract.numbers.grammar import parse
from extract.spans import Number

if TYPE_CHECKING:
    from spacy.tokens import Doc


def find_numbers(doc: Doc) -> tuple[Number, ...]:
    """All numbers of a narration in order, of measures or not."""
    return tuple(parsed.number for parsed in parse(doc)[1])
