"""The words of a narration, plain, with the tokens that belong to figures marked."""

from __future__ import annotations

from spacy.tokens import Doc

from extract.measures.wording import base_forms
from extract.narration import narration_of
from extract.spans import Quantity

MARKS = frozenset(",;:.!?-–—")
"""Punctuation, as tokens."""


class Reading:
    """Words, tags and lemmas a token, words and lemmas in lower case."""

    def __init__(self, doc: Doc, quantities: tuple[Quantity, ...]) -> None:
        self.doc = doc
        self.quantities = quantities
        self.words: tuple[str, ...] = tuple(token.lower_.replace("’", "'") for token in doc)
        self.tags: tuple[str, ...] = tuple(token.tag_ for token in doc)
        self.lemmas: tuple[str, ...] = tuple(
            base_forms().get(word, token.lemma_.lower()) if token.tag_[:2] == "VB" else token.lemma_.lower()
            for word, token in zip(self.words, doc, strict=True)
        )
        self.narration = narration_of(doc)
        self._figure = [False] * len(self.words)
        for quantity in quantities:
            for at in range(quantity.start, quantity.end):
                self._figure[at] = True

    def __len__(self) -> int:
        return len(self.words)

    def word(self, at: int) -> str:
        """The word at a token, empty outside the narration."""
        return self.words[at] if 0 <= at < len(self.words) else ""

    def tag(self, at: int) -> str:
        """The part-of-speech tag at a token, empty outside the narration."""
        return self.tags[at] if 0 <= at < len(self.tags) else ""

    def is_figure(self, at: int) -> bool:
        """True where a token belongs to a quantity."""
        return 0 <= at < len(self._figure) and self._figure[at]

    def is_verb(self, at: int) -> bool:
        """True for a verb in any form."""
        return self.tag(at)[:2] == "VB"

    def is_noun(self, at: int) -> bool:
        """True for a noun by its tag."""
        return self.tag(at)[:2] == "NN"

    def new_cue(self, at: int) -> bool:
        """True where a token begins a cue."""
        return at == 0 or self.narration.cue[at] != self.narration.cue[at - 1]

    def text(self, start: int, end: int) -> tuple[str, ...]:
        """Words `start` to `end` without marks."""
        return tuple(word for word in self.words[max(0, start) : end] if word not in MARKS)

    def runs_on(self, at: int, other: int) -> bool:
        """True where no mark and, in raw captions, no cue's border stands between two tokens."""
        if any(word in MARKS for word in self.words[at + 1 : other]):
            return False
        return self.narration.punctuated or self.narration.cue[at] == self.narration.cue[other]
