"""Noun phrases that name a thing.

Takes "an 11 inch head", "coupling caps" (named "coupling cap"), "tighten the eccentric"; refuses "a hair over", "my
mother in law", and words of measure ("the action").
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from extract.measures.clauses import Bounds
from extract.measures.knowledge import knowledge
from extract.measures.letters import letter_name
from extract.measures.lexicon import Found, Lexicon
from extract.measures.mentions import Mentions
from extract.measures.reading import Reading
from extract.measures.wording import singular

_BEFORE_NOUN = frozenset({"DT", "JJ", "JJR", "JJS", "PRP$", "CD", "POS", "VBN", "PDT", "RB"})
_BEHIND_LONE_ADJECTIVE = frozenset({"DT", "IN", "VB", "PO", "TO", "", ".", ",", "CC"})


@dataclass(frozen=True, slots=True)
class Thing:
    """A noun phrase that names a thing; `name` is short, singular, without its article."""

    start: int
    end: int
    name: str
    role: str
    """ "subject", "part", "tool", "material", or "other" where no list has it."""
    preposition: str = ""
    """The preposition before it, empty where there is none."""

    @property
    def head(self) -> str:
        """Its main noun."""
        return _last_word(self.name)


@lru_cache(maxsize=1 << 13)
def _last_word(name: str) -> str:
    """Kept, since each thing is set beside many others by its head."""
    return name.rsplit(maxsplit=1)[-1]


class ThingFinder:
    """Finds the things of one narration."""

    def __init__(self, reading: Reading, clauses: Bounds, mentions: Mentions, lexicon: Lexicon) -> None:
        self._reading = reading
        self._clauses = clauses
        self._lexicon = lexicon
        self._measure = {at for found in mentions.nouns for at in range(found.start, found.end)}
        self._starting = {found.start: found for found in mentions.things}
        self._ending: dict[int, Found] = {}
        for found in mentions.things:
            self._ending.setdefault(found.end, found)

    def find(self) -> Iterator[Thing]:
        """All things in the order of speaking; they don't overlap."""
        at = 0
        while at < len(self._reading):
            letter = letter_name(self._reading, self._lexicon, at)
            if letter:
                role = "part" if " " in letter else "other"
                yield Thing(at, at + 1, letter, role, self._preposition(at))
                at += 1
                continue
            end = self._phrase_end(at)
            thing = self._thing(at, end) if end > at else None
            if thing:
                yield thing
            at = max(end, at + 1)

    def _phrase_end(self, at: int) -> int:
        """End of the run of nouns that begins at a token; the token itself where none does."""
        named = self._starting.get(at)
        if at in self._measure and (named is None or named.end - named.start < 2):
            return at
        end = named.end if named else at
        while self._is_noun(end) and end not in self._measure and (end == at or not self._stops(end)):
            end = max(end + 1, self._starting[end].end if end in self._starting else 0)
        return end

    def _stops(self, at: int) -> bool:
        return self._breaks(at) or self._reading.words[at] in knowledge().times

    def _breaks(self, at: int) -> bool:
        """True where a noun phrase can't run on over this token's left border."""
        return self._clauses.start[at] == at or self._reading.new_cue(at)

    def _is_noun(self, at: int) -> bool:
        reading = self._reading
        word = reading.word(at)
        words = knowledge().clause
        if not word or not word[0].isalpha() or reading.is_figure(at) or word in words.reads or word in words.being:
            return False
        led = reading.tag(at - 1) in ("DT", "JJ", "PRP$", "IN", "NN")
        if (self._breaks(at) or not led) and reading.word(at + 1) in ("it", "them"):
            return False  # a command that the tagger takes for a noun: "chuck it"
        told = reading.word(at + 1) == "'s" and reading.is_verb(at) and word not in words.openers
        return told or reading.is_noun(at) or self._stands_alone(at) or self._stands_before_figure(at)

    def _stands_alone(self, at: int) -> bool:
        """An adjective that is used as a noun: "tighten the eccentric a quarter turn"."""
        reading = self._reading
        if reading.tag(at) not in ("JJ", "VBG", "VBD", "VB", "VBP") or reading.tag(at - 1) not in ("DT", "PRP$"):
            return False
        return reading.tag(at + 1)[:2] in _BEHIND_LONE_ADJECTIVE and reading.words[at] not in knowledge().clause.loose

    def _stands_before_figure(self, at: int) -> bool:
        """A plural taken for a verb at the start of a breath: "rows half an inch apart"."""
        return self._reading.tag(at) == "VBZ" and self._breaks(at) and self._reading.is_figure(at + 1)

    def _thing(self, start: int, end: int) -> Thing | None:
        known, words = self._ending.get(end), self._reading.words
        if end - start > 1 and not known and words[end - 1] in knowledge().vague:
            end -= 1
        name = " ".join([*words[start : end - 1], singular(words[end - 1])])
        role = known.entry.role if known else "other"
        if known and role == "subject" and known.entry.name not in name:
            name = known.entry.name
        head = name.rsplit(maxsplit=1)[-1]
        if name in ("bit", "piece") and self._reading.is_figure(start - 1):
            return Thing(start, end, name, "tool" if name == "bit" else "other")
        either = name in knowledge().either and self._reading.word(start - 1) not in ("a", "an", "")
        if head.endswith(".") or (self._is_no_thing(name, head, role) and not either):
            return None
        return Thing(start, end, name, role, self._preposition(start))

    def _is_no_thing(self, name: str, head: str, role: str) -> bool:
        refused = knowledge().not_things
        if role == "other":
            if head != name and head in knowledge().not_lone:
                return name in refused
            return head in refused or name in refused or (len(head) < 2 and head == name)
        return name in refused and role not in ("part", "subject")

    def _preposition(self, start: int) -> str:
        reading = self._reading
        if self._breaks(start) and reading.tag(start - 1) not in ("IN", "DT", "PRP$", "TO"):
            return ""
        words = knowledge().clause
        at, stop = start - 1, self._clauses.start[start]
        while at >= stop and reading.tag(at) in _BEFORE_NOUN and not reading.is_figure(at):
            if reading.words[at] in words.being or reading.words[at] in ("n't", "not"):
                break
            at -= 1
        return reading.words[at] if at >= stop and reading.words[at] in words.prepositions else ""
