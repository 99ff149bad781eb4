"""Sentence starts in punctuated text.

Takes "Cups are fine. Drive side cone." as two; "0.140 inch", "approx. five turns", "Dr. Bell" and "1/4 in. wide" hold
no end of a sentence.
"""

from __future__ import annotations

from spacy.tokens import Doc, Token

from extract.segments.words import sentence_words

_ENDS = frozenset({".", "?", "!", "…", "...", "?!", "!?", ".."})
_CLOSERS = frozenset({'"', "'", "”", "’", "''", ")", "]"})


def mark_starts(doc: Doc) -> list[bool | None]:
    """True behind each end of a sentence, False elsewhere."""
    starts: list[bool | None] = [False] * len(doc)
    starts[0] = True
    for token in doc[:-1]:
        if not _ends_sentence(token):
            continue
        after = token.i + 1
        while after < len(doc) - 1 and doc[after].text in _CLOSERS and not doc[after - 1].whitespace_:
            after += 1
        if not doc[after].text[0].islower():
            starts[after] = True
    return starts


def _ends_sentence(token: Token) -> bool:
    words = sentence_words()
    if token.text in _ENDS:
        before = token.nbor(-1).lower_ if token.i and not token.nbor(-1).whitespace_ else ""
        return before not in words.never_end
    if len(token) < 2 or token.text[-1] not in ".?!…":
        return False
    stem = token.lower_.rstrip(".?!…")
    return stem not in words.never_end and (stem in words.may_end or len(stem) > 1)
