"""Whether two figures are said of the same thing at the same moment of the job.

Takes "the gap at the points" twice; refuses the left one and the right one, the old and the new, and a thing that was
worked on in between. Common usage; no source.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from extract.checks.frames import Frames
from extract.checks.said_in import holding
from extract.checks.talk import Said, Talk, words_of
from extract.checks.vocabulary import check_words, holds
from extract.roots import root

_APART = 2
"""Cues between two statements from which on the second is said anew, not a further figure of one list."""
_NEAR, _BESIDE, _BEHIND = 10, 6, 5
_WAY = 3
_PLAIN = 3
"""Telling words in common by which what the record takes for a target was a finding after all."""
_SERIES = 3
"""So many figures of one thing are readings of it."""
_DEFINITE = frozenset({"the", "that", "this", "my", "her", "his", "your", "our", "being"})
_AS_IT_CAME = frozenset({"old", "original"})
_THAT = (("that",), ("my",), ("this",))
_ARTICLES = (("a",), ("an",), ("another",), ("each",))


@dataclass(frozen=True, slots=True)
class _Marks:
    """Words beside a figure by which it is told from another: a value for each row of the check's words."""

    telling: tuple[frozenset[str], ...]
    alone: tuple[bool, ...]
    alone_as_it_came: tuple[bool, ...]
    sided: frozenset[int]
    """Rows of `telling` that have a word."""
    own_size: bool


class Alike:
    """The ways in which a later figure says again what an earlier one said."""

    def __init__(self, talk: Talk, frames: Frames) -> None:
        self._talk = talk
        self._frames = frames
        self._marks_of: dict[int, _Marks] = {}
        self._fellows: Counter[tuple[str | None, str | None, str | None]] = Counter()
        self._earlier: dict[int, int] = {}
        for one in talk.said:
            self._earlier[one.place] = self._fellows[_same(one)]
            self._fellows[_same(one)] += 1

    def recalled(self, first: Said, second: Said) -> bool:
        """ "That left one came in pulling 58": the second is said of how it was found."""
        if not self._frames.says_found(second) or not self.may_be_one(first, second, apart=1):
            return False
        general = first.measure.phase == "general" or self._frames.says_aimed(first)
        if general and not self._frames.says_found(first):
            return False
        here, there = self._frames.named(first), self._frames.named(second)
        if first.measure.phase == "target" and self.kinship(first, second) < _PLAIN:
            return False
        same = not here.attributes or not there.attributes or bool(here.attributes & there.attributes)
        if same and here.spoken & there.spoken:
            return self._items_go(first, second) or self.kinship(first, second) > _PLAIN
        return same and bool(here.things & there.things or self._which(first, second))

    def aimed_again(self, first: Said, second: Said) -> bool:
        """ "So remember, we're shooting for 9/64": both are said of what is wanted."""
        recalls = self._recalls(second)
        if not self.may_be_one(first, second) or (self._frames.frame(first) != "target" and not recalls):
            return False
        if self._frames.frame(second) != "target" or not (recalls or self._frames.says_aimed(second)):
            return False
        if recalls:
            return self._shares(first, second, least=1)
        return self._frames.says_aimed(first) and not self._is_changed(second) and self._names_anew(first, second)

    def said_again(self, first: Said, second: Said) -> bool:
        """ "The shelf being thirty inches wide": the same attribute of the same thing, and nothing was done to it."""
        if not self.may_be_one(first, second) or self._is_series(second) or self._is_changed(second):
            return False
        if not self._at_one_time(first, second) or self._frames.says_found(second):
            return False
        recalls = self._recalls(second)
        if recalls and self._shares(first, second, least=1):
            return True
        return self._names_anew(first, second) and not self._is_reworked(first, second)

    def sized_again(self, first: Said, second: Said) -> bool:
        """ "That 1/4 inch strip": a thing called by its size, which was another when it was made."""
        noun = root(second.after[0]) if second.after else ""
        if second.before[-1:] not in _THAT or noun in check_words().many or not self.may_be_one(first, second):
            return False
        return noun in self._frames.named(first).things and noun in {root(word) for word in first.before[-_BESIDE:]}

    def told_otherwise(self, first: Said, second: Said) -> bool:
        """ "Remember, the punchings are 6 thou": said to have been told, but what was told of it is another figure."""
        found = self._frames.says_found(second)
        if not (found or self.recalls_firmly(second)) or not self.may_be_one(first, second):
            return False
        if found and self._frames.frame(first) != "as_found":
            return False
        one, other = first.measure, second.measure
        if one.attribute is None or one.attribute != other.attribute:
            return False
        kin = self.kinship(first, second) - found
        return kin >= _PLAIN - 1 or (kin > 0 and one.item == other.item)

    def recalls_firmly(self, one: Said) -> bool:
        """ "Like I said", "remember": not merely a word that may be of recalling."""
        near = (*one.before[-_NEAR:], *one.after[:_BEHIND])
        words = check_words()
        return bool(words.recalling_firmly & {*near}) or holds(near, words.recalling_phrases) is not None

    def kinship(self, first: Said, second: Said) -> int:
        """How many telling words are said near both."""
        here, there = self._frames.named(first), self._frames.named(second)
        told = len(here.things & there.things) + len(here.spoken & there.spoken) + len(self._which(first, second))
        alike = self._frames.says_found(second) and self._frames.frame(first) == "as_found"
        return told + alike + (alike and self._frames.says_found(first))

    def _at_one_time(self, first: Said, second: Said) -> bool:
        """Of one moment; what was left so and is said again without a word of how it came is of that moment too."""
        before, after = self._frames.frame(first), self._frames.frame(second)
        return before == after or (before == "as_left" and after == "as_found")

    def _words(self, one: Said) -> tuple[str, ...]:
        return self._talk.near(one, _NEAR, _BEHIND)

    def may_be_one(self, first: Said, second: Said, apart: int = _APART) -> bool:
        """Nothing tells the one from the other, and the second is said anew."""
        if second.measure.cue - first.measure.cue < apart:
            return False
        if (first.measure.where or second.measure.where) != (second.measure.where or first.measure.where):
            return False
        one, other = self._marks(first), self._marks(second)
        if one.own_size or other.own_size or self.are_sided(first, second):
            return False
        if _are_two_kinds(first.measure.attribute, second.measure.attribute):
            return False
        if self._frames.says_found(second) and holding("against", "written").search(" ".join(first.before[-_NEAR:])):
            return False
        if self._frames.says_found(second) and self._frames.frame(first) == "as_found":
            return one.alone_as_it_came == other.alone_as_it_came
        return one.alone == other.alone

    def are_sided(self, first: Said, second: Said) -> bool:
        """The one is the left one, the other the right one."""
        one, other = self._marks(first), self._marks(second)
        return any(not one.telling[row] & other.telling[row] for row in one.sided & other.sided)

    def _shares(self, first: Said, second: Said, least: int) -> bool:
        """The same attribute and, of the things named, so many less one in common."""
        here, there = self._frames.named(first), self._frames.named(second)
        one, other = first.measure.attribute, second.measure.attribute
        if not (here.attributes | {one}) & (there.attributes | {other}) - {None}:
            return False
        return len(here.things & there.things) >= least - 1 and self._items_go(first, second)

    def _recalls(self, one: Said) -> bool:
        """The words near a figure say that it was spoken of before."""
        return bool(check_words().recalling & {*one.before[-_NEAR:], *one.after[:_BEHIND]})

    def _which(self, first: Said, second: Said) -> frozenset[str]:
        """The words that tell which of several it is, where both have them: "the left one"."""
        which = frozenset().union(*check_words().telling_apart)
        return which & {*self._words(first)} & {*self._words(second)}

    def _items_go(self, first: Said, second: Said) -> bool:
        one, other = ({root(word) for word in words_of(said.measure.item or "")} for said in (first, second))
        return (
            not one
            or not other
            or bool(one & other)
            or bool(self._frames.named(first).things & self._frames.named(second).things)
        )

    def _names_anew(self, first: Said, second: Said) -> bool:
        """Attribute and thing are both said in words both times, the second time with "the"."""
        here, there = self._frames.named(first), self._frames.named(second)
        near = self._words(second)
        roots = [root(word) for word in near]
        shared = {word for word in here.things & there.things if word in roots}
        said = {root(word) for word in self._words(first)}
        definite = any(
            root(near[at]) in shared & said and (near[at].endswith("'s") or _DEFINITE & {*near[max(0, at - 2) : at]})
            for at in range(len(near))
        )
        one, other = first.measure, second.measure
        same = one.attribute == other.attribute and (one.item == other.item or bool(self._said_in_both(first, second)))
        return definite and bool(here.attributes & there.attributes) and same

    def _said_in_both(self, first: Said, second: Said) -> frozenset[str]:
        """Things that are named in the words near both."""
        here, there = ({root(word) for word in self._words(one)} for one in (first, second))
        return self._frames.named(first).things & self._frames.named(second).things & here & there

    def _is_series(self, second: Said) -> bool:
        return self._earlier[second.place] >= _SERIES

    def _marks(self, one: Said) -> _Marks:
        """What the words right beside a figure tell of it, read once: each figure is set beside many."""
        if one.place not in self._marks_of:
            near = _without_ways(self._talk.near(one, _BESIDE, _BEHIND))
            roots = frozenset(root(word) for word in near)
            self._marks_of[one.place] = _marks_among(roots, _has_own_size(one))
        return self._marks_of[one.place]

    def _is_changed(self, second: Said) -> bool:
        return bool(check_words().changing & {*self._talk.near(second, _NEAR), *second.after[:3]})

    def _is_reworked(self, first: Said, second: Said) -> bool:
        """A step between the two works on the thing."""
        items = {root(word) for one in (first, second) for word in words_of(one.measure.item or "")}
        things = items or self._said_in_both(first, second)
        between = range(first.measure.cue, second.measure.cue + 1)
        return any(
            step.verb in check_words().reworked
            and step.cue_from in between
            and things & {root(word) for word in words_of(f"{step.object} {step.quote}")}
            for step in self._talk.record.steps
        )


def _without_ways(words: tuple[str, ...]) -> tuple[str, ...]:
    """Without "front to back", which is of no front."""
    ways = check_words().ways
    at = next((at for at in range(len(words)) if words[at : at + _WAY] in ways), None)
    return words if at is None else (*words[:at], *_without_ways(words[at + _WAY :]))


def _are_two_kinds(one: str | None, other: str | None) -> bool:
    """ "String height" and "fret height"."""
    names, others = (one or "").split(), (other or "").split()
    return len(names) > 1 and len(others) > 1 and names[-1] == others[-1] and names != others


def _has_own_size(one: Said) -> bool:
    """ "a 10k resistor", "a quarter inch driver": another size is another thing."""
    item = (one.measure.item or "").split()
    return bool(item) and bool(one.after) and one.after[0].removesuffix("s") in item and one.before[-1:] in _ARTICLES


def _marks_among(roots: frozenset[str], own_size: bool) -> _Marks:
    vocabulary = check_words()
    telling = tuple(row & roots for row in vocabulary.telling_apart)
    return _Marks(
        telling,
        tuple(bool(row & roots) for row in vocabulary.alone),
        tuple(bool((row - _AS_IT_CAME) & roots) for row in vocabulary.alone),
        frozenset(row for row, words in enumerate(telling) if words),
        own_size,
    )


def _same(one: Said) -> tuple[str | None, str | None, str | None]:
    """What makes two figures readings of one thing."""
    return one.measure.kind, one.measure.attribute, one.measure.item
