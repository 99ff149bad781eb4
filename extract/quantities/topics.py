"""Where a narration names what is measured: the attribute words of the trade, and the words of data/evidence.toml."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache
from typing import Literal

from spacy.tokens import Doc

from extract.numbers.figure import Tape
from extract.numbers.lexer import split
from extract.quantities.knowledge import knowledge
from extract.trade import Trade

_TOLD_BY_THINGS = ("voltage", "current")
"""Kinds that a thing tells: what "the cathode's at nineteen" gives is a voltage."""

Role = Literal["name", "adjective", "verb", "word", "unit"]


@dataclass(frozen=True, slots=True)
class Topic:
    """What a phrase says of a figure near it."""

    kind: str
    """Kind of unit: "length", "temperature" ..."""
    role: Role
    name: str = ""
    """Name of the attribute, empty for a mere word."""
    habit: str | None = None
    """The unit that goes without saying."""


@dataclass(frozen=True, slots=True)
class Hit:
    """A topic named at lexemes `start` to `end`."""

    start: int
    end: int
    topic: Topic


_Index = dict[str, list[tuple[tuple[str, ...], Topic]]]


@cache
def _index(trade: Trade) -> _Index:
    found: _Index = {}

    def add(phrase: str, topic: Topic) -> None:
        pieces = split(phrase)
        found.setdefault(pieces[0], []).append((pieces, topic))

    for attribute in trade.attributes:
        for role, phrases in (("name", attribute.said), ("adjective", attribute.adjectives), ("verb", attribute.verbs)):
            for phrase in phrases:
                add(phrase, Topic(attribute.kind, role, attribute.name, attribute.unit))  # type: ignore[arg-type]
        for band in attribute.bands if attribute.kind in _TOLD_BY_THINGS else ():
            for item in band.items:
                add(item, Topic(attribute.kind, "word", attribute.name, attribute.unit))
    for kind, words in knowledge().kinds.items():
        for word in words:
            add(word, Topic(kind, "word"))
    for kind, words in knowledge().evidence.units_alone.items():
        for word in words:
            add(word, Topic(kind, "unit"))
    return found


def find_topics(doc: Doc, tape: Tape, trade: Trade) -> tuple[Hit, ...]:
    """All topics in order of their start; a word may belong to several. Linear in the narration's length."""
    index = _index(trade)
    lemmas = [doc[lexeme.token].lemma_.lower() for lexeme in tape.lexemes]
    hits: list[Hit] = []
    for at in range(len(tape)):
        for first in dict.fromkeys((tape.text(at), lemmas[at])):
            for pieces, topic in index.get(first, ()):
                if all(
                    at + offset < len(tape) and piece in (tape.text(at + offset), lemmas[at + offset])
                    for offset, piece in enumerate(pieces)
                ):
                    as_verb = topic.role == "name" and len(pieces) == 1 and doc[tape.lexemes[at].token].tag_[:2] == "VB"
                    hits.append(Hit(at, at + len(pieces), replace(topic, role="verb") if as_verb else topic))
    return tuple(hits)


class Topics:
    """Topics near a place."""

    def __init__(self, hits: tuple[Hit, ...]) -> None:
        self._hits = hits
        self._starts = [hit.start for hit in hits]

    def between(self, start: int, end: int) -> Iterator[Hit]:
        """Topics that begin at or behind `start` and before `end`."""
        for place in range(bisect_left(self._starts, start), len(self._hits)):
            if self._hits[place].start >= end:
                return
            yield self._hits[place]
