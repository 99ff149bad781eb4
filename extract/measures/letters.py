"""Notes, strings and keys that are named by their letter.

Takes "the a wants five and a half", "C was 9 1/2"; refuses the article ("a third").
"""

from __future__ import annotations

from extract.measures.knowledge import knowledge
from extract.measures.lexicon import Lexicon
from extract.measures.reading import Reading

_LETTERS = frozenset("abcdefg")
_POINTERS = frozenset({"the", "this", "that", "middle", "low", "high"})


def letter_name(reading: Reading, lexicon: Lexicon, at: int) -> str | None:
    """The name of a lettered thing: "a string" where the trade has such a part, else the letter; None for no letter."""
    word = reading.words[at]
    if word not in _LETTERS or reading.is_figure(at):
        return None
    behind, text = reading.word(at + 1), reading.doc[at].text
    linked = not behind or behind in knowledge().clause.behind_letter
    capital = text.isupper() and (text != "A" or linked)
    if not capital and reading.word(at - 1) not in _POINTERS:
        return None
    if not linked and reading.tag(at + 1) not in ("IN", ".", ",", "CC"):
        return None
    return lexicon.part_named(f"{word} string") or word
