"""How much two figures share that few figures of the talk have: the rarer a word, the more it tells.

K. Spärck Jones, "A statistical interpretation of term specificity and its application in retrieval", Journal of
Documentation 28 (1972).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import log

from extract.checks.said_in import words_for
from extract.checks.talk import Said, Talk, words_of
from extract.checks.vocabulary import check_words
from extract.roots import root

_TABLE = "twice"
_NEAR, _BEHIND = 12, 6
_WIDE, _WIDELY_BEHIND, _FEW = 20, 10, 14
_SHORTEST = 3
DIMENSIONS = ("width", "thickness", "depth", "length", "height", "diameter", "gap")
_FEWEST = 24
"""Figures that a talk is taken to have at least: in a short one a word is soon rare."""


@dataclass(frozen=True, slots=True)
class Shared:
    """Sums of rarities, in nats: of words close by both, close by one and further off the other, further off both."""

    near: float
    wide: float
    far: float


class Kinship:
    """The telling words about the figures of one talk."""

    def __init__(self, talk: Talk, said: Sequence[Said]) -> None:
        self._talk = talk
        self._words = {one.place: self._about(one) for one in said}
        count = Counter(word for _, wide in self._words.values() for word in wide)
        figures = max(_FEWEST, len(said))
        self._rarity = {word: log(figures / often) for word, often in count.items()}

    def near(self, one: Said) -> frozenset[str]:
        """Roots of the telling words close by a figure."""
        return self._words[one.place][0]

    def rarity(self, word: str) -> float:
        """In nats: nothing for a word that stands by every figure."""
        return self._rarity.get(word, 0.0)

    def shared(self, first: Said, second: Said) -> Shared:
        """How akin two figures are."""
        (near, wide), (its_near, its_wide) = self._words[first.place], self._words[second.place]
        both = near & its_near
        one = ((near & its_wide) | (wide & its_near)) - both
        far = (wide & its_wide) - both - one
        return Shared(*(sum(map(self.rarity, words)) for words in (both, one, far)))

    def are_apart(self, first: Said, second: Said) -> bool:
        """The one is said to be wide, the other long."""
        here, there = (self.near(one) & _DIMENSIONS for one in (first, second))
        return bool(here) and bool(there) and not here & there

    def _about(self, one: Said) -> tuple[frozenset[str], frozenset[str]]:
        measure = one.measure
        near = _roots((*self._talk.near(one, _NEAR), *one.after[:_BEHIND]))
        named = words_of(" ".join(filter(None, (measure.item, measure.attribute, measure.where))))
        wide = _roots((*self._talk.near(one, _WIDE, few=_FEW), *one.after[:_WIDELY_BEHIND], *named))
        return near, near | (wide - _DIMENSIONS)


_DIMENSIONS = frozenset(DIMENSIONS)


def _roots(words: Iterable[str]) -> frozenset[str]:
    """Telling words by their roots; those of one dimension by its name, so that "across" is "wide" too."""
    bare = [word.removesuffix("'s") for word in words]
    empty = check_words().frame_empty | words_for(_TABLE, "empty")
    telling = {root(word) for word in bare if len(word) >= _SHORTEST and word.isalpha() and word not in empty} - empty
    said = {*bare}
    return frozenset(telling) | {name for name in DIMENSIONS if words_for(_TABLE, name) & said}
