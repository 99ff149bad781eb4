"""A narration as the rules of this stage see it: clauses, words of measure, things, and the thing on the bench."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections import defaultdict
from operator import attrgetter

from spacy.tokens import Doc

from extract.measures.clauses import clause_bounds, sentence_bounds
from extract.measures.knowledge import knowledge
from extract.measures.lexicon import Found, Lexicon
from extract.measures.mentions import find_mentions
from extract.measures.phase_words import phase_words
from extract.measures.reading import Reading
from extract.measures.things import Thing, ThingFinder
from extract.measures.wording import singular
from extract.spans import Quantity

_OPENING = 60
"""Tokens in which the thing on the bench is introduced."""
_INTRODUCES = re.compile(
    r"\b(this( here)? (is|'s)|it 's|here ('s|is)|we 've got|i 've got|we have|i have|today)\b( \S+){0,4}$"
)


class Scene(Reading):
    """A narration with its quantities. Built in time linear in its tokens."""

    def __init__(self, doc: Doc, quantities: tuple[Quantity, ...], lexicon: Lexicon) -> None:
        super().__init__(doc, quantities)
        self.lexicon = lexicon
        self.sentences = sentence_bounds(self)
        self.clauses = clause_bounds(self, self.sentences)
        self.mentions = find_mentions(self, self.clauses, lexicon)
        self.things = list(ThingFinder(self, self.clauses, self.mentions, lexicon).find())
        self._starts = [thing.start for thing in self.things]
        self._by_head: defaultdict[str, list[Thing]] = defaultdict(list)
        for thing in self.things:
            self._by_head[thing.head].append(thing)
        self._work = self._count_work()
        self.subject = self._find_subject()

    def things_in(self, start: int, end: int) -> list[Thing]:
        """Things that begin in tokens `start` to `end`, in order."""
        return self.things[bisect_left(self._starts, start) : bisect_left(self._starts, end)]

    def times_named(self, head: str) -> int:
        """How often a head noun is said in the whole narration."""
        return len(self._by_head.get(head, ()))

    def mentions_of(self, head: str, start: int, end: int) -> list[Thing]:
        """Things with this head noun that begin in tokens `start` to `end`, in order."""
        found = self._by_head.get(head, [])
        first, last = (bisect_left(found, at, key=attrgetter("start")) for at in (start, end))
        return found[first:last]

    def work_done(self, at: int) -> int:
        """How many verbs of work were said before a token."""
        return self._work[at]

    def part_within(self, noun: Found) -> Thing | None:
        """The part that a word of measure names: "seat" of "seat height", "key" before "dip"."""
        for start, end in ((noun.start, noun.end - 1), (noun.start - 1, noun.start)):
            if 0 <= start < end:
                name = " ".join([*self.words[start : end - 1], singular(self.words[end - 1])])
                if self.lexicon.part_named(name) and name not in knowledge().vague:
                    return Thing(start, end, name, "part")
        return None

    def _count_work(self) -> list[int]:
        verbs, count, counts = phase_words().work, 0, []
        for lemma, tag in zip(self.lemmas, self.tags, strict=True):
            counts.append(count)
            count += lemma in verbs and tag in ("VB", "VBP", "VBD", "VBG", "VBZ")
        return counts

    def _find_subject(self) -> Thing | None:
        """An instrument or machine named early, else what "this is", else what the trade mends."""
        early = [thing for thing in self.things_in(0, _OPENING) if not thing.preposition]
        for thing in early:
            if thing.role == "subject":
                return thing
        for thing in early:
            opening = " ".join(self.words[self.clauses.start[thing.start] : thing.start])
            if thing.role in ("part", "other") and _INTRODUCES.search(opening):
                return thing
        usual = self.lexicon.usual_subject
        return Thing(0, 0, usual, "subject") if usual else None
