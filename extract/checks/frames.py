"""Of which moment of the job a figure is said, and what it is said to be of, by the words near it.

Takes "that left one came in pulling 58" as found and "we're shooting for 9/64" as aimed at. Common usage; no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from extract.checks.talk import Said, Talk, words_of
from extract.checks.vocabulary import Phrase, check_words
from extract.roots import root

Frame = Literal["as_found", "target", "as_left", "general"]

_BEFORE, _BEHIND = 8, 8
_NEAR, _AFTER, _FEW = 12, 6, 8
_STEM = 4
"""Letters by which "drop test" and "dropping" are one word."""
_DIMENSIONS = frozenset({"leng", "widt", "heig", "dept", "thic", "diam", "size", "dist", "weig"})
"""Every thing has these: they tell none from another."""
_LONGEST = 4
_TRAILING = 5
"""Words behind a figure among which it is told that it was found so."""
_SHORTEST = 3
_BORDERS = frozenset({"and", "but", "so", "then"})
"""Letters of a name; the A of a string is told by the words that tell things apart."""


@dataclass(frozen=True, slots=True)
class Named:
    """What a figure is of: roots of the names of things and of attributes said near it."""

    things: frozenset[str]
    attributes: frozenset[str]
    """As far as they are said in words."""
    spoken: frozenset[str]
    """Any other telling words near it, by their first letters."""


class Frames:
    """Frames and names of the figures of one talk."""

    def __init__(self, talk: Talk, beyond: bool = False) -> None:
        self._talk = talk
        self._beyond = beyond
        """Names are taken from the next statement too."""
        self._named: dict[int, Named] = {}
        self._found: dict[int, bool] = {}
        self._framed: dict[int, Frame] = {}

    @cached_property
    def _things(self) -> frozenset[str]:
        trade = self._talk.trade
        terms = (*trade.parts, *trade.subjects, *trade.materials, *trade.tools)
        items = (one.item or "" for one in self._talk.record.measures)
        said = (word for term in terms for name in term.said for word in name.split())
        words = (*said, *(word for item in items for word in words_of(item)))
        return frozenset(root(word) for word in words if len(word) >= _SHORTEST) - check_words().frame_empty

    @cached_property
    def _attributes(self) -> dict[str, frozenset[str]]:
        """Names of attributes by each single word that says them, and by their phrases."""
        found: dict[str, set[str]] = {}
        for attribute in self._talk.trade.attributes:
            for said in (*attribute.said, *attribute.adjectives, *attribute.verbs):
                found.setdefault(said, set()).add(attribute.name)
        return {said: frozenset(names) for said, names in found.items()}

    def frame(self, one: Said) -> Frame:
        """As said by the words near the figure; the record's phase where they say nothing."""
        if one.place not in self._framed:
            self._framed[one.place] = self._frame(one)
        return self._framed[one.place]

    def _frame(self, one: Said) -> Frame:
        if self.says_found(one):
            return "as_found"
        return "target" if self.says_aimed(one) else one.measure.phase

    def says_found(self, one: Said) -> bool:
        """The words near a figure say that it was so before the work."""
        if one.place not in self._found:
            words = check_words().frame_found
            near = (_own_words(one), one.after[:_BEHIND])
            self._found[one.place] = any(holds_any(side, words) for side in near)
        return self._found[one.place]

    def says_aimed(self, one: Said) -> bool:
        """The words before a figure say that it is what is wanted."""
        return holds_any(one.clause[-_BEFORE:], check_words().frame_aimed)

    def named(self, one: Said) -> Named:
        """What the words near a figure name."""
        if one.place not in self._named:
            self._named[one.place] = self._name(one)
        return self._named[one.place]

    def _name(self, one: Said) -> Named:
        near = self._talk.near(one, _NEAR, _AFTER, _FEW, self._beyond)
        roots = frozenset(root(word) for word in near)
        empty = check_words().frame_empty
        pieces = {
            " ".join(root(word) for word in near[at : at + length]) for at in range(len(near)) for length in (1, 2, 3)
        }
        attributes = frozenset(
            name
            for piece in pieces
            for name in self._attributes.get(piece, ())
            if self._kinds[name] == one.measure.kind
        )
        if one.measure.kind != "length":
            # A thing has one weight and one voltage, but many lengths.
            attributes |= {one.measure.kind or ""}
        item = {root(word) for word in words_of(one.measure.item or "")}
        attribute = one.measure.attribute
        telling = roots | {root(word) for word in words_of(attribute or "")}
        spoken = {word[:_STEM] for word in telling - empty if len(word) > 3 and word.isalpha()}
        return Named(
            things=self._things & (roots | item),
            attributes=attributes,
            spoken=frozenset(spoken) - _DIMENSIONS,
        )

    @cached_property
    def _kinds(self) -> dict[str, str]:
        return {attribute.name: attribute.kind for attribute in self._talk.trade.attributes}


def _own_words(one: Said) -> tuple[str, ...]:
    """The words before a figure without what belongs to the figure before: "3.2 grams as it came in and 3.0 now"."""
    words = one.clause
    if is_now(one):
        return own_statement(words)[-_BEFORE:]
    if one.near and len(words) == len(one.before):
        for start in range(min(_TRAILING, len(words)), -1, -1):
            for length in range(_LONGEST, 1, -1):
                end = start + length
                apart = len(words) - end > start // 2
                if apart and words[start:end] in check_words().frame_found:
                    return words[end:][-_BEFORE:]
    return words[-_BEFORE:]


def is_now(one: Said) -> bool:
    """ "She's 3/32 now", "it's now 3/32": told against how it was."""
    return "now" in (*one.after[:1], *one.clause[-1:])


def own_statement(words: tuple[str, ...]) -> tuple[str, ...]:
    """The words behind the last that begins another statement: "3/16 when she came and she's" has "she's" left."""
    last = next((at for at in range(len(words) - 1, -1, -1) if words[at] in _BORDERS), -1)
    return words[last + 1 :]


def holds_any(words: tuple[str, ...], phrases: frozenset[Phrase]) -> bool:
    """One of the phrases is said among the words."""
    return any(words[at : at + length] in phrases for at in range(len(words)) for length in range(1, _LONGEST + 1))
