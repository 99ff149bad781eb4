"""All that the rules of this stage look at, indexed once a narration.

A rule that looks back asks the index for a value, a word or an item, so that looking back costs the same an hour in as
at the start.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import defaultdict
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from spacy.tokens import Doc

from extract.corrections.phrases import CorrectionWords, correction_words
from extract.corrections.pieces import Piece, cut
from extract.corrections.templates import Line
from extract.narration import narration_of
from extract.record import Scope
from extract.roots import root
from extract.spans import Measured, Unit
from extract.units import UnitError, to_unit

_CONTEXT = 8
"""Words on either side of a figure that tell what it is of."""
_CONTENT = frozenset({"NN", "NNS", "NNP", "NNPS", "JJ", "VB", "VBD", "VBG", "VBN", "VBP", "VBZ", "JJR", "JJS", "RB"})
_WEIGHT = {"force": "mass"}
"""A pull in pounds may have been read as a force or as a mass."""
_SAME = Fraction(6, 100)
"""Two figures in different units that differ by no more than this part say the same."""
_LEAD = 5
"""Words between an edit phrase and the figure that holds."""
_LOOK_BACK = 12
"""Measures that a word leads back to, the latest ones."""


@dataclass(frozen=True, slots=True)
class Draft:
    """A correction as a rule found it; places are pieces, `end` exclusive."""

    begin: int
    end: int
    scope: Scope
    withdrawn: tuple[int, int]
    """The statement taken back."""
    holds: tuple[int, int]
    """What holds instead."""
    gone: tuple[Measured, ...] = ()
    """Measures that no longer stand, the one that was first said first."""
    kept: Measured | None = None
    said_again: bool = False
    """`withdrawn` is the statement as repeated here, not where it was first made."""
    unit: Unit | None = None
    """The right unit where only the unit was put right, or where a bare number holds instead."""
    value: Fraction | None = None
    """That bare number; None where the withdrawn figure stands with another unit."""


class Scene:
    """A narration's pieces with their indexes."""

    def __init__(self, doc: Doc, measures: tuple[Measured, ...]) -> None:
        self.doc = doc
        self.words: CorrectionWords = correction_words()
        self.pieces: tuple[Piece, ...] = cut(doc, measures)
        self.line = Line(self.pieces)
        self.marked: bool = narration_of(doc).punctuated
        self.figures: tuple[int, ...] = tuple(at for at, piece in enumerate(self.pieces) if piece.measured)
        self._by_value: defaultdict[tuple[str, Fraction, Fraction], list[int]] = defaultdict(list)
        self._by_word: defaultdict[str, list[int]] = defaultdict(list)
        self._mentions: defaultdict[str, list[int]] = defaultdict(list)
        for at, piece in enumerate(self.pieces):
            for word in _roots(piece.text):
                self._mentions[word].append(at)
        for at in self.figures:
            self._by_value[_key(self.measured(at))].append(at)
            for word in self.context(at):
                self._by_word[word].append(at)

    def counterparts_in(self, begin: int, end: int) -> set[str]:
        """Words said between two places that have a counterpart; "left-handed" has "left" in it, "in front" is one."""
        found = self._counterparts
        among = found[bisect_left(found, (begin,)) : bisect_left(found, (end,))]
        return {word for _, until, word in among if until <= end}

    @cached_property
    def _counterparts(self) -> list[tuple[int, int, str]]:
        """Begin, end and word of each."""
        texts = [piece.text.removesuffix("'s") for piece in self.pieces]
        found = []
        for at, text in enumerate(texts):
            pair = f"{text} {self.pieces[at + 1].text}" if at + 1 < len(texts) else ""
            ends = dict.fromkeys((text, *text.split("-")), at + 1) | {pair: at + 2}
            found += [(at, end, word) for word, end in ends.items() if word in self.words.swaps]
        return sorted(found)

    @cached_property
    def edit_runs(self) -> tuple[tuple[int, int], ...]:
        """Edit phrases that follow one another as one, each with at least a strong one: "sorry, i tell a lie"."""
        found = []
        at = 1
        while at < len(self.pieces):
            end, strong = self.run_at(at)
            if strong:
                found.append((at, end))
            at = max(end, at + 1)
        return tuple(found)

    @cached_property
    def edit_ends(self) -> dict[int, int]:
        """Where each of `edit_runs` begins, with where it ends."""
        return dict(self.edit_runs)

    @cached_property
    def edit_begins(self) -> dict[int, int]:
        """Where each of `edit_runs` ends, with where it begins."""
        return {end: begin for begin, end in self.edit_runs}

    def answers(self, place: int) -> bool:
        """An edit phrase leads up to a figure with only small words between: it is what holds, "no, it's 16"."""
        for at in range(place, max(1, place - _LEAD), -1):
            if at in self.edit_begins:
                return True
            if self.pieces[at - 1].text not in self.words.fillers:
                return False
        return False

    def run_at(self, place: int) -> tuple[int, bool]:
        """Behind the edit phrases that begin at a place, and whether one of them is strong."""
        at, strong = place, False
        while at < len(self.pieces):
            firm = 0 if self._is_sorry_for(at) else self.words.edits.at(self.pieces, at)
            length = max(firm, self.words.weak_edits.at(self.pieces, at))
            if not length:
                break
            strong = strong or (bool(firm) and firm == length)
            at += length
        return at, strong

    def _is_sorry_for(self, place: int) -> bool:
        """ "Sorry about the noise", "sorry in advance": an apology for something else."""
        behind = [piece.text for piece in self.pieces[place + 1 : place + 3]]
        lone = self.pieces[place].text == "sorry" and not self.pieces[place].mark
        return lone and (behind[:1] in (["about"], ["if"]) or behind in (["in", "advance"], ["for", "the"]))

    def measured(self, place: int) -> Measured:
        """The measure at a place. Raises `ValueError` where there is none: rules ask only at figures."""
        found = self.pieces[place].measured
        if found is None:
            raise ValueError(f"no measure at piece {place}")
        return found

    def context(self, place: int) -> frozenset[str]:
        """Words that tell what a figure is of: its item, attribute and place, and content words near it."""
        one = self.measured(place)
        named = " ".join(filter(None, (one.item, one.attribute, one.where))).lower().split()
        near = range(max(0, place - _CONTEXT), min(len(self.pieces), place + _CONTEXT + 1))
        return frozenset(map(root, named)) | self.content(near)

    def content(self, places: range) -> frozenset[str]:
        """Stems of the content words at these places."""
        return frozenset().union(*(self._stems[at] for at in places))

    @cached_property
    def _stems(self) -> tuple[frozenset[str], ...]:
        """Stems of each piece, none for one that is no content word."""
        return tuple(
            frozenset(_roots(piece.text))
            if piece.tag in _CONTENT and not piece.figure and piece.text not in self.words.empty
            else frozenset()
            for piece in self.pieces
        )

    def said_before(self, one: Measured, before: int) -> tuple[int, ...]:
        """Places before a place at which the same value of the same kind was said."""
        found = self._by_value[_key(one)]
        end = bisect_left(found, before)
        return tuple(found[max(0, end - _LOOK_BACK) : end])

    def mentioned(self, word: str, before: int) -> bool:
        """The word was said before a place."""
        found = self._mentions.get(root(word))
        return found is not None and found[0] < before

    def often(self, word: str) -> int:
        """How often a word, without its ending, is said in the narration."""
        return len(self._mentions.get(word, ()))

    def places_of(self, word: str, before: int) -> list[int]:
        """The latest places before a place at which a word, without its ending, was said."""
        found = self._mentions.get(word, [])
        end = bisect_left(found, before)
        return found[max(0, end - _LOOK_BACK) : end]

    def about(self, words: frozenset[str], kind: str | None, before: int) -> list[int]:
        """Places of earlier measures of a kind whose surroundings share these words, most shared first, then latest."""
        score: defaultdict[int, int] = defaultdict(int)
        for word in words:
            found = self._by_word.get(word, [])
            end = bisect_left(found, before)
            for at in found[max(0, end - _LOOK_BACK) : end]:
                if kind is None or kind_of(self.measured(at)) == kind:
                    score[at] += 2 if word in self._named(at) else 1
        return sorted(score, key=lambda at: (-score[at], -at))

    def _named(self, place: int) -> frozenset[str]:
        one = self.measured(place)
        return frozenset(root(word) for word in " ".join(filter(None, (one.item, one.attribute))).lower().split())

    def sentence_end(self, place: int, reach: int) -> int:
        """Behind the end of the sentence a place is in, or behind `reach` pieces."""
        last = min(len(self.pieces), place + reach)
        for at in range(place, last):
            if self.pieces[at].ends:
                return at + 1
        return last

    def text(self, begin: int, end: int) -> str:
        """The words of pieces as they were said."""
        if begin >= end:
            return ""
        return self.doc[self.pieces[begin].start : self.pieces[end - 1].end].text.strip()


def _key(one: Measured) -> tuple[str, Fraction, Fraction]:
    quantity = one.quantity
    low = quantity.low if quantity.low is not None else quantity.value
    high = quantity.high if quantity.high is not None else quantity.value
    return f"{kind_of(one)} {quantity.unit.name if quantity.unit else ''}", low, high


def kind_of(one: Measured) -> str | None:
    """The kind of a measure's unit; None where no unit is known."""
    return one.quantity.unit.kind if one.quantity.unit else None


def alike(first: Measured, second: Measured) -> bool:
    """Both may be figures for one thing: of one kind, or the first left its unit out."""
    kinds = tuple(_WEIGHT.get(kind, kind) if kind else None for kind in (kind_of(first), kind_of(second)))
    return None in kinds or kinds[0] == kinds[1] or not first.quantity.unit_said


def same_kind(first: Measured, second: Measured) -> bool:
    """Both have units, said or supplied, of one kind."""
    kinds = tuple(_WEIGHT.get(kind, kind) if kind else None for kind in (kind_of(first), kind_of(second)))
    return None not in kinds and kinds[0] == kinds[1]


def differ(first: Measured, second: Measured) -> bool:
    """The two say different figures."""
    return _key(first)[1:] != _key(second)[1:] or first.quantity.unit != second.quantity.unit


def says_again(first: Measured, second: Measured) -> bool:
    """The second is the first in another unit: "1 1/8 inches, call it 28 mm"."""
    one, other = first.quantity.unit, second.quantity.unit
    if one is None or other is None or one == other:
        return False
    try:
        same = to_unit(first.quantity.value, one.name, other.name)
    except UnitError:
        return False
    return abs(same - second.quantity.value) <= abs(same) * _SAME


def _roots(word: str) -> list[str]:
    """A word and the parts it is joined of: "drive-side" tells of a drive and of a side."""
    return list(dict.fromkeys(root(part) for part in (word, *word.split("-")) if part))
