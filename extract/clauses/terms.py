"""The trade's own terms in a narration: "steel wool", "bass foot", "torque wrench"."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from extract.trade import Term, Trade

TermKind = Literal["part", "tool", "material"]


@dataclass(frozen=True, slots=True)
class TermSpan:
    """The longest trade term that begins at a token."""

    start: int
    end: int
    name: str
    """The trade's name for it, where it was said in another way."""
    kind: TermKind


class Terms:
    """A trade's terms, ready to be looked for in any number of texts."""

    def __init__(self, trade: Trade) -> None:
        self._known = _by_first_word(trade)

    def find(self, words: tuple[str, ...]) -> dict[int, TermSpan]:
        """Token -> the longest term that begins there, singular or plural. Linear in the number of words."""
        found: dict[int, TermSpan] = {}
        for at, word in enumerate(words):
            if word == "ca" and words[at + 1 : at + 2] == ("n't",):
                continue
            for first in dict.fromkeys((word, singular(word))):  # in order: of equally long ones the first stays
                for phrase, name, kind in self._known.get(first, ()):
                    end = at + len(phrase)
                    longer = at not in found or end > found[at].end
                    if longer and end <= len(words) and _same(phrase, words[at:end]):
                        found[at] = TermSpan(at, end, name, kind)
        return found


def _by_first_word(trade: Trade) -> dict[str, list[tuple[tuple[str, ...], str, TermKind]]]:
    listed: tuple[tuple[TermKind, tuple[Term, ...]], ...] = (
        ("part", trade.parts),
        ("material", trade.materials),
        ("tool", trade.tools),
    )
    known: dict[str, list[tuple[tuple[str, ...], str, TermKind]]] = {}
    for kind, terms in listed:
        for term in terms:
            for said in sorted({term.name, *term.said}):
                phrase = tuple(said.replace("-", " - ").split())
                known.setdefault(phrase[0], []).append((phrase, term.name, kind))
    return known


def _same(phrase: tuple[str, ...], words: tuple[str, ...]) -> bool:
    return all(wanted in (word, singular(word)) for wanted, word in zip(phrase, words, strict=True))


def singular(word: str) -> str:
    """A word without its plural s; "glass" stays."""
    if len(word) > 3 and word.endswith("s") and not word.endswith("ss"):
        return word[:-1]
    return word
