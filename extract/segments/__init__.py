"""Where sentences begin.

The parser respects what is set here and decides the rest. Punctuated narrations are cut at their marks; raw captions,
which have none, by breath, pause and the words at the border.
"""

from __future__ import annotations

from itertools import pairwise

from spacy.tokens import Doc

from extract.narration import narration_of
from extract.segments.borders import border_starts
from extract.segments.marks import mark_starts

__all__ = ["sentence_starts"]

_LONGEST_SENTENCE = 90
"""Tokens. A stretch without a mark longer than this was left unpunctuated by the transcriber."""


def sentence_starts(doc: Doc) -> list[bool | None]:
    """For each token: True where a sentence must begin, False where none may, None where the parser decides.

    Linear in the number of tokens. Needs tags.
    """
    narration = narration_of(doc)
    if not len(doc):
        return []
    if not narration.punctuated:
        return border_starts(doc, narration, 0, len(doc))
    starts = mark_starts(doc)
    begins = [at for at, start in enumerate(starts) if start] + [len(doc)]
    for begin, end in pairwise(begins):
        if end - begin > _LONGEST_SENTENCE:
            starts[begin:end] = border_starts(doc, narration, begin, end)
    return starts
