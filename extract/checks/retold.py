"""A figure that is told again otherwise: words say that it was told before, and the same rare words stand by another.

Takes "the hanger's four mil out" and long after "that hanger, mind, were six mil out when I put the gauge on"; refuses
"it was 42, it's 36 now", a figure that was said before as it is said now, and things that share only common words.
Source: consistency within one narration. How much a shared word tells is its rarity among the talk's figures, as in
K. Spärck Jones, "A statistical interpretation of term specificity", Journal of Documentation 28 (1972).
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from extract.checks.agreement import agreement
from extract.checks.conflict import SOURCE, agree, is_near, is_statement
from extract.checks.finding import Suspicion
from extract.checks.frames import Frames
from extract.checks.linear import SAME
from extract.checks.said_in import holding, words_for
from extract.checks.sameness import Alike
from extract.checks.talk import Said, Talk, words_of
from extract.checks.vocabulary import check_words, holds
from extract.roots import root

_TABLE = "retold"
_LOOK_BACK = 80
_NEAR, _BEHIND = 12, 6
_PAST = 5
"""Words before a figure among which "was" tells of it."""
_APART = 2
"""Cues between the two."""
_ENOUGH, _MORE, _MUCH = 2.4, 3.0, 4.0
"""How akin two figures must be; the same where the second's unit was only supposed, and is of another kind; the same
where only a summing up says that it is told again, in which the last reading stands as well as the first."""
_FURTHER, _ATTRIBUTE, _ITEM, _WHERE, _TOLD_APART = 0.6, 1.0, 0.7, 1.5, 1.5
"""Weights of a word that is only further off, and of what the record says of both; what tells them apart takes away."""
_CLEARS = 0.7
"""A figure that agrees clears one where it is nearly as akin."""
_FAR = Fraction(5, 2)
_SHORTEST = 4
_DIMENSIONS = ("width", "thickness", "depth", "length", "height", "diameter", "gap")
_FEWEST = 24
"""Figures that a talk is taken to have at least: in a short one a word is soon rare."""


@dataclass(frozen=True, slots=True)
class _Words:
    """Roots of telling words right by a figure and, with them, further about it."""

    near: frozenset[str]
    wide: frozenset[str]


class _Kinship:
    """How much two figures share that few others have."""

    def __init__(self, alike: Alike, said: list[Said]) -> None:
        self._alike = alike
        self._words = {one.place: _words_about(one) for one in said}
        self._figures = max(_FEWEST, len(said))
        self._count = Counter(word for words in self._words.values() for word in words.wide)

    def shared(self, first: Said, second: Said) -> frozenset[str]:
        """Roots said right by the second and anywhere about the first."""
        return self._words[second.place].near & self._words[first.place].wide

    def of(self, first: Said, second: Said) -> float:
        """The sum of the rarities of what both share, and of what the record says of both."""
        near = self._words[first.place].near
        if self._alike.are_sided(first, second):
            return 0.0
        told = sum((1.0 if word in near else _FURTHER) * self.rarity(word) for word in self.shared(first, second))
        one, other = first.measure, second.measure
        told += _ATTRIBUTE * bool(one.attribute and one.attribute == other.attribute)
        told += _ITEM * bool({*words_of(one.item or "")} & {*words_of(other.item or "")})
        told += _WHERE * bool(one.where and one.where == other.where)
        apart = _are_apart(self._words[first.place].near, self._words[second.place].near)
        return told - _TOLD_APART * (apart + (not self._alike.may_be_one(first, second)))

    def rarity(self, word: str) -> float:
        """In nats: nothing for a word that stands by every figure."""
        return math.log(self._figures / self._count[word]) if self._count[word] else 0.0


def find_retold(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that is told as one told before and is another."""
    frames = Frames(talk)
    said = [one for one in talk.said if is_statement(one)]
    kinship = _Kinship(Alike(talk, frames), said)
    for at, second in enumerate(said):
        recaps = holds(second.before[-_NEAR:], phrases_for("recapping")) is not None
        if not (recaps or _is_retold(second, frames)):
            continue
        earlier = [one for one in said[max(0, at - _LOOK_BACK) : at] if second.measure.cue - one.measure.cue >= _APART]
        meant = [one for one in earlier if _may_be_meant(one, second)]
        found = _other(kinship, meant, second, _MUCH if recaps else _ENOUGH)
        if found is not None:
            yield _suspect(kinship, found, second)


def _is_retold(one: Said, frames: Frames) -> bool:
    """Words near a figure tell that it is known already, or that it was so."""
    words = check_words()
    near = (*one.before[-_NEAR:], *one.after[:_BEHIND])
    if near[-2:] == ("i", "said") or holds(near, phrases_for("comparing")) is not None:
        return False
    if words_for(_TABLE, "firm") & {*near} or holds(near, words.recalling_phrases) is not None:
        return True
    if frames.says_found(one) or words_for(_TABLE, "pointing") & {*one.before[-1:]}:
        return True
    # "It was 0.6 and I brought it down to 0.4" tells of what is being done, not of what was told.
    past = bool(words_for(_TABLE, "past") & {*one.clause[-_PAST:]})
    return past and not words_for(_TABLE, "doing") & {*one.after}


def phrases_for(name: str) -> frozenset[tuple[str, ...]]:
    """A list of phrases: "inside what I said" holds a figure against the one told, "for the file" tells all again."""
    return frozenset(tuple(phrase.split()) for phrase in words_for(_TABLE, name))


def _words_about(one: Said) -> _Words:
    near = _roots((*one.before[-_NEAR:], *one.after[:_BEHIND]))
    named = words_of(f"{one.measure.item or ''} {one.measure.attribute or ''}")
    wide = _roots((*one.before, *one.after, *named)) - frozenset(_DIMENSIONS)
    return _Words(near, near | wide)


def _roots(words: tuple[str, ...]) -> frozenset[str]:
    """Telling words by their roots; those of one dimension by its name, so that "across" is "wide" too."""
    bare = [word.removesuffix("'s") for word in words]
    empty = check_words().frame_empty | words_for(_TABLE, "empty")
    telling = {root(word) for word in bare if len(word) >= _SHORTEST and word.isalpha() and word not in empty} - empty
    return frozenset(telling) | _dimensions(bare)


def _are_apart(near: frozenset[str], other: frozenset[str]) -> bool:
    """The one is said to be wide, the other long."""
    here, there = (words & frozenset(_DIMENSIONS) for words in (near, other))
    return bool(here) and bool(there) and not here & there


def _dimensions(words: Iterable[str]) -> frozenset[str]:
    said = {*words}
    return frozenset(name for name in _DIMENSIONS if words_for(_TABLE, name) & said)


def _may_be_meant(first: Said, second: Said) -> bool:
    """Of one kind, and the first no figure that a sheet or book asks for."""
    if holding("against", "written").search(" ".join(first.before[-_NEAR:])):
        return False
    return first.measure.kind == second.measure.kind or not second.measure.unit_said


def _other(kinship: _Kinship, earlier: list[Said], second: Said, enough: float) -> Said | None:
    """The earlier figure that is most akin, where none that agrees is nearly as much."""
    agree = [_agrees(one, second) for one in earlier]
    agreeing = max((kinship.of(one, second) for one, same in zip(earlier, agree, strict=True) if same), default=0.0)
    others = [one for one, same in zip(earlier, agree, strict=True) if not same and kinship.shared(one, second)]
    best = max(others, key=lambda one: (kinship.of(one, second), one.place), default=None)
    if best is None or agreeing >= _CLEARS * (most := kinship.of(best, second)):
        return None
    enough = enough if best.measure.kind == second.measure.kind else _MORE
    return best if most >= enough and _is_close(best, second) else None


def _agrees(first: Said, second: Said) -> bool:
    if first.measure.kind == second.measure.kind:
        return agree(first, second)
    return agreement(first.figure, second.figure, SAME) != "disagrees"


def _is_close(first: Said, second: Said) -> bool:
    if first.measure.kind == second.measure.kind:
        return is_near(first, second, _FAR)
    return 1 / _FAR < second.figure.value / first.figure.value < _FAR


def _suspect(kinship: _Kinship, first: Said, second: Said) -> Suspicion:
    one, other = first.measure, second.measure
    shared = kinship.shared(first, second)
    said = [word.removesuffix("'s") for word in (*second.before[-_NEAR:], *second.after[:_BEHIND])]
    named = [word for word in said if root(word) in shared]
    name = max(named, key=lambda word: kinship.rarity(root(word)), default=other.attribute or "figure")
    display = other.display if one.kind == other.kind else other.quote
    message = f"the {name} was told as {one.display} before and as {display} here, with no correction between"
    return Suspicion("conflict", "stop", (one, other), message, SOURCE)
