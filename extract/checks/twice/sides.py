"""Words right beside a figure by which its thing is told from its neighbours: left and right, bass and treble.

Takes "the left one" and "the right one" for two; "front to back" is of no front. Common usage; no source.
"""

from __future__ import annotations

from extract.checks.talk import Said, Talk
from extract.checks.vocabulary import check_words
from extract.roots import root

_BESIDE, _BEHIND = 6, 5
_WAY = 3


class Sides:
    """The telling words of each figure by the rows of the check's words, read once."""

    def __init__(self, talk: Talk) -> None:
        self._talk = talk
        self._of: dict[int, tuple[frozenset[str], ...]] = {}

    def differ(self, first: Said, second: Said) -> bool:
        """The one is the left one, the other the right one."""
        rows = zip(self._rows(first), self._rows(second), strict=True)
        return any(here and there and not here & there for here, there in rows)

    def _rows(self, one: Said) -> tuple[frozenset[str], ...]:
        if one.place not in self._of:
            near = _without_ways(self._talk.near(one, _BESIDE, _BEHIND))
            roots = frozenset(root(word) for word in near)
            self._of[one.place] = tuple(row & roots for row in check_words().telling_apart)
        return self._of[one.place]


def _without_ways(words: tuple[str, ...]) -> tuple[str, ...]:
    """Without "front to back"."""
    ways = check_words().ways
    at = next((at for at in range(len(words)) if words[at : at + _WAY] in ways), None)
    return words if at is None else (*words[:at], *_without_ways(words[at + _WAY :]))
