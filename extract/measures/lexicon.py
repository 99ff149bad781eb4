"""A trade's words, ready to be found among tokens.

Takes "string height", "in the clamps", "thin" (a verb), "coupling caps" (plural); knows nothing of grammar.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from extract.measures.knowledge import ANY_KIND, knowledge
from extract.measures.wording import pieces, singular
from extract.trade import Attribute, Band, Trade

Role = Literal["noun", "adjective", "verb", "subject", "part", "tool", "material"]


@dataclass(frozen=True, slots=True)
class Entry:
    """One phrase of the trade: as a word for an attribute, or for a thing."""

    pieces: tuple[str, ...]
    role: Role
    name: str
    attribute: Attribute | None = None


@dataclass(frozen=True, slots=True)
class Found:
    """An entry found at tokens `start` to `end`."""

    start: int
    end: int
    entry: Entry


class Lexicon:
    """All phrases of a trade by their first word."""

    def __init__(self, trade: Trade) -> None:
        self.kinds = {attribute.name: attribute.kind for attribute in trade.attributes}
        self.usual = {thing: attribute.name for attribute in trade.attributes for thing in attribute.things}
        self.usual_subject = trade.subjects[0].name if trade.subjects and trade.name != "general" else ""
        self.owners = {attribute.name: attribute.of for attribute in trade.attributes if attribute.of}
        self._bands: dict[tuple[str, str], list[tuple[str, Band]]] = {}
        for attribute in trade.attributes:
            for band in attribute.bands:
                for item in band.items:
                    self._bands.setdefault((item, attribute.kind), []).append((attribute.name, band))
        self._by_first: dict[str, list[Entry]] = {}
        for entry in _entries(trade):
            self._by_first.setdefault(entry.pieces[0], []).append(entry)
        for entries in self._by_first.values():
            entries.sort(key=lambda entry: len(entry.pieces), reverse=True)

    def part_named(self, phrase: str) -> str | None:
        """The phrase itself where the trade has it as a part, else None."""
        cut = pieces(phrase)
        entries = self._by_first.get(cut[0], ())
        return phrase if any(entry.pieces == cut and entry.role == "part" for entry in entries) else None

    def bands_of(self, item: str, kind: str) -> list[tuple[str, Band]]:
        """Attributes of a kind that have a band for a thing by its name or by its head noun."""
        return [band for name in dict.fromkeys((item, item.split()[-1])) for band in self._bands.get((name, kind), ())]

    def at(self, words: tuple[str, ...], lemmas: tuple[str, ...], at: int) -> Iterator[Found]:
        """Every phrase that begins at a token, longest first; nouns may be plural, verbs inflected."""
        for first in dict.fromkeys((words[at], singular(words[at]), lemmas[at])):
            for entry in self._by_first.get(first, ()):
                end = at + len(entry.pieces)
                if end <= len(words) and all(
                    _same(entry.role, piece, words[at + offset], lemmas[at + offset])
                    for offset, piece in enumerate(entry.pieces)
                ):
                    yield Found(at, end, entry)


def _same(role: Role, piece: str, word: str, lemma: str) -> bool:
    if piece == word:
        return True
    return piece == lemma if role == "verb" else piece == singular(word)


def _entries(trade: Trade) -> Iterable[Entry]:
    for attribute in trade.attributes:
        for role, phrases in (("noun", attribute.said), ("adjective", attribute.adjectives), ("verb", attribute.verbs)):
            for phrase in phrases:
                yield Entry(pieces(phrase), role, attribute.name, attribute)  # type: ignore[arg-type]
    for noun in knowledge().loose_nouns:
        yield Entry(pieces(noun), "noun", noun, Attribute(noun, (noun,), ANY_KIND))
    for role, terms in (
        ("subject", trade.subjects),
        ("part", trade.parts),
        ("tool", trade.tools),
        ("material", trade.materials),
    ):
        for term in terms:
            for phrase in term.said:
                yield Entry(pieces(phrase), role, term.name)  # type: ignore[arg-type]


@lru_cache(maxsize=16)
def lexicon_of(trade: Trade) -> Lexicon:
    """The lexicon of a trade, built once."""
    return Lexicon(trade)
