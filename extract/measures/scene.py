"""A narration as the rules of this stage see it: words, breaks, things and words of measure.

Finds where clauses break ("..., and on the treble side it's ..."), which nouns name a thing, and which words name an
attribute. Linear in the number of tokens.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from spacy.tokens import Doc

from extract.measures.knowledge import knowledge
from extract.measures.lexicon import Found, Lexicon
from extract.measures.phase_words import phase_words
from extract.measures.wording import singular
from extract.narration import narration_of
from extract.spans import Quantity

_PAUSE = 2.5
"""Seconds of silence behind which nothing is taken for the same clause."""
_OPENERS = frozenset({"and", "but", "so", "because", "cos", "then", "which", "while", "when", "if", "although", "though", "now", "or", "till", "until", "where", "well", "cause"})
_SUBJECTS = frozenset({"i", "you", "we", "he", "she", "they", "it", "there", "that", "this", "these", "those", "what"})
_MARKS = frozenset(",;:.!?-–—")
_NO_PHRASE = frozenset({"'s", "n't", "not", "is", "was"})
_PREPOSITIONS = frozenset(
    "of at on in with for from to by under over off into onto between through across along around round behind above "
    "below near inside outside against about up down like than per without within until till after before during".split()
)
_OPENING = 60
"""Tokens in which the thing on the bench is introduced."""
_INTRODUCES = re.compile(r"\b(this( here)? is|this( here)? 's|it 's|here 's|here is|we 've got|i 've got|we have|i have|today)\b.*$")
_AFTER_LETTER = frozenset({"is", "was", "'s", "wants", "wanted", "at", "to", "needs", "and", "string", "on", "should", "reads", "sits", "gets", "takes"})
_READS = frozenset({"measures", "weighs", "stands", "sits", "mikes", "mics", "calipers", "wants", "needs", "takes"})
_LOOSE = frozenset("same other first last next whole lot most least best worst old new only opposite".split())
_BEFORE_NOUN = frozenset({"DT", "JJ", "JJR", "JJS", "PRP$", "CD", "POS", "VBN", "PDT", "RB"})


@dataclass(frozen=True, slots=True)
class Thing:
    """A noun phrase that names a thing; `name` is short, singular, without its article."""

    start: int
    end: int
    name: str
    head: str
    role: str
    """ "subject", "part", "tool", "material", or "other" where no list has it."""
    preposition: str
    """The preposition before it, empty where there is none."""


class Scene:
    """A narration with its quantities."""

    def __init__(self, doc: Doc, quantities: tuple[Quantity, ...], lexicon: Lexicon) -> None:
        self.doc = doc
        self.lexicon = lexicon
        self.quantities = quantities
        self.words: tuple[str, ...] = tuple(token.lower_.replace("’", "'") for token in doc)
        self.tags: tuple[str, ...] = tuple(token.tag_ for token in doc)
        self.lemmas: tuple[str, ...] = tuple(token.lemma_.lower() for token in doc)
        self.narration = narration_of(doc)
        self._in_figure = self._mark_figures()
        self.sentence_start, self.sentence_end = self._bound(self._sentence_breaks())
        self.clause_start, self.clause_end = self._bound(self._clause_breaks())
        self.nouns: list[Found] = []
        self.adjectives: list[Found] = []
        self.verbs: list[Found] = []
        self._named: list[Found] = []
        self._scan()
        self.things = list(self._find_things())
        self._work = self._count_work()
        self._heads = Counter(thing.head for thing in self.things)
        self.subject = self._find_subject()
        self._thing_starts = [thing.start for thing in self.things]

    # ------------------------------------------------------------ where things stand

    def things_in(self, start: int, end: int) -> list[Thing]:
        """Things that begin in tokens `start` to `end`, in order."""
        return self.things[bisect_left(self._thing_starts, start) : bisect_left(self._thing_starts, end)]

    def mentions(self, head: str) -> int:
        """How often a head noun is said in the whole narration."""
        return self._heads[head]

    def part_within(self, noun: Found) -> Thing | None:
        """The part that a word of measure names: "seat" of "seat height", "key" before "dip"."""
        for start, end in ((noun.start, noun.end - 1), (noun.start - 1, noun.start)):
            if 0 <= start < end:
                name = " ".join([*self.words[start : end - 1], singular(self.words[end - 1])])
                if self.lexicon.named(name):
                    return Thing(start, end, name, name.split()[-1], "part", "")
        return None

    def is_figure(self, at: int) -> bool:
        """True where a token belongs to a quantity."""
        return 0 <= at < len(self._in_figure) and self._in_figure[at]

    def cue_joins(self, at: int, other: int) -> bool:
        """True where no mark and, in raw captions, no cue's border stands between two tokens."""
        if any(word in _MARKS for word in self.words[at + 1 : other]):
            return False
        return self.narration.punctuated or self.narration.cue[at] == self.narration.cue[other]

    def text(self, start: int, end: int) -> tuple[str, ...]:
        """Words `start` to `end` without marks."""
        return tuple(word for word in self.words[max(0, start) : end] if word not in _MARKS)

    def work_done(self, at: int) -> int:
        """How many verbs of work were said before a token."""
        return self._work[at]

    def _count_work(self) -> list[int]:
        verbs, count, counts = phase_words().work, 0, []
        for lemma, tag in zip(self.lemmas, self.tags, strict=True):
            counts.append(count)
            count += lemma in verbs and tag in ("VB", "VBP", "VBD", "VBG", "VBZ")
        return counts

    def _mark_figures(self) -> list[bool]:
        marks = [False] * len(self.words)
        for quantity in self.quantities:
            for at in range(quantity.start, quantity.end):
                marks[at] = True
        return marks

    # ------------------------------------------------------------ breaks

    def _bound(self, breaks: list[bool]) -> tuple[list[int], list[int]]:
        """For each token the start and end of its stretch between breaks."""
        starts, ends, start = [0] * len(breaks), [len(breaks)] * len(breaks), 0
        for at, begins in enumerate(breaks):
            start = at if begins else start
            starts[at] = start
        end = len(breaks)
        for at in range(len(breaks) - 1, -1, -1):
            ends[at] = end
            end = at if breaks[at] else end
        return starts, ends

    def _sentence_breaks(self) -> list[bool]:
        return [at == 0 or bool(token.is_sent_start) for at, token in enumerate(self.doc)]

    def _clause_breaks(self) -> list[bool]:
        sentences = self._sentence_breaks()
        return [begins or self._opens_clause(at) for at, begins in enumerate(sentences)]

    def _opens_clause(self, at: int) -> bool:
        """Refuses a break inside a figure and between two halves of a list ("hook and needle")."""
        if self._in_figure[at]:
            return False
        where = self.narration
        if where.start[at] - where.end[at - 1] > _PAUSE:
            return True
        if self.words[at - 1] in _MARKS and self.words[at - 1] != "-":
            return True
        if self.words[at] in _OPENERS:
            if self.words[at] in ("now", "then") and self.tags[at - 1][:2] in ("VB", "PO"):
                return False
            return self._has_verb(at + 1) or self._in_figure[min(at + 1, len(self.words) - 1)]
        if where.cue[at] != where.cue[at - 1] and not where.punctuated:
            if self.tags[at][:2] == "NN":
                return self._has_verb(at + 1, 3)
            return self.tags[at] not in ("IN", "TO", "CD") or self.words[at] in _SUBJECTS
        return self.words[at] in _SUBJECTS and self.tags[at - 1][:2] in ("NN", "RB", "RP") and self._has_verb(at + 1, 2)

    def _has_verb(self, at: int, reach: int = 5) -> bool:
        stretch = self.tags[at : at + reach]
        return any(tag[:2] in ("VB", "MD") for tag in stretch) or any(
            word in ("'s", "'re", "'ve", "'ll") for word in self.words[at : at + reach]
        )

    # ------------------------------------------------------------ words of the trade

    def _scan(self) -> None:
        for at in range(len(self.words)):
            if self._in_figure[at] or not self.words[at][0].isalnum():
                continue
            taken: set[str] = set()
            for found in self.lexicon.at(self.words, self.lemmas, at):
                role = found.entry.role
                group = role if role in ("noun", "adjective", "verb") else "thing"
                if any(self._in_figure[i] for i in range(found.start, found.end)) or not self._fits(found):
                    continue
                if group == "thing":
                    if group not in taken:
                        self._named.append(found)
                    taken.add(group)
                    continue
                {"noun": self.nouns, "adjective": self.adjectives, "verb": self.verbs}[group].append(found)

    def _fits(self, found: Found) -> bool:
        """Whether the part of speech allows the reading; the tagger is unsure of commands ("broach the plate")."""
        last, tag = found.end - 1, self.tags[found.end - 1]
        if found.entry.role == "adjective":
            return True
        if found.entry.role == "verb":
            return self.tags[found.start][:2] == "VB" or (
                self.tags[min(last + 1, len(self.tags) - 1)] in ("DT", "PRP$") and self.tags[found.start] == "NN"
            )
        if found.end - found.start > 1:
            return True
        if self.words[last] == "times":
            return False
        if tag[:2] in ("VB", "MD"):
            return self.tags[max(0, last - 1)] in ("DT", "PRP$") or self._heads_clause(found.start, found.end)
        return tag[:2] == "NN" or self.tags[max(0, last - 1)] in ("DT", "PRP$", "JJ")

    def _heads_clause(self, start: int, end: int) -> bool:
        """A noun taken for a verb: "stop is 220", "Post now."."""
        if self.clause_start[start] != start or end >= len(self.words):
            return False
        return self.words[end] in ("is", "was", "'s", "are", "were", ":") or (
            self.words[end] in ("now", "next", "first") and self.clause_end[start] - start <= 3
        )

    # ------------------------------------------------------------ things

    def _find_things(self) -> Iterator[Thing]:
        words_of_measure = {at for found in self.nouns for at in range(found.start, found.end)}
        named = {found.start: found for found in self._named}
        ending: dict[int, Found] = {}
        for found in self._named:
            ending.setdefault(found.end, found)
        at = 0
        while at < len(self.words):
            letter = self._letter(at)
            if letter:
                yield letter
                at = letter.end
                continue
            found = named.get(at)
            if at in words_of_measure and (found is None or found.end - found.start < 2):
                at += 1
                continue
            end = found.end if found else at
            while self._is_noun(end) and end not in words_of_measure and (
                end == at or not (self._breaks(end) or self.words[end] in knowledge().times)
            ):
                end = max(end + 1, named[end].end if end in named else 0)
            if end == at:
                at += 1
                continue
            thing = self._thing(at, end, ending.get(end))
            if thing:
                yield thing
            at = end

    def _find_subject(self) -> Thing | None:
        """What is on the bench: an instrument or machine named early, else what "this is", else what the trade mends."""
        early = self.things_before(_OPENING)
        for thing in early:
            if thing.role == "subject" and not thing.preposition:
                return thing
        for thing in early:
            opening = " ".join(self.words[self.clause_start[thing.start] : thing.start])
            if not thing.preposition and _INTRODUCES.search(opening) and thing.role in ("part", "other"):
                return thing
        usual = self.lexicon.usual_subject
        return Thing(0, 0, usual, usual.split()[-1], "subject", "") if usual else None

    def things_before(self, end: int) -> list[Thing]:
        """Things that begin before a token."""
        return [thing for thing in self.things if thing.start < end]

    def _letter(self, at: int) -> Thing | None:
        """A note, string or key by its letter: "the a wants five", "A was 7"; refuses the article."""
        token, before = self.doc[at].text, self.words[at - 1] if at else ""
        if len(token) != 1 or self.words[at] not in "abcdefg" or self._in_figure[at] or at + 1 >= len(self.words):
            return None
        behind = self.words[at + 1]
        capital = token.isupper() and (token != "A" or behind in _AFTER_LETTER)
        if not (capital or before in ("the", "this", "that", "middle", "low", "high")):
            return None
        if not (behind in _AFTER_LETTER or self.tags[at + 1] in ("IN", ".", ",", "CC")):
            return None
        string = self.lexicon.named(f"{self.words[at]} string")
        name = string or self.words[at]
        return Thing(at, at + 1, name, name.split()[-1], "part" if string else "other", self._preposition(at))

    def _breaks(self, at: int) -> bool:
        """True where a noun phrase can't run on over this token's left border."""
        return self.clause_start[at] == at or self.narration.cue[at] != self.narration.cue[at - 1]

    def _is_noun(self, at: int) -> bool:
        if at >= len(self.words) or self._in_figure[at] or not self.words[at][0].isalpha():
            return False
        if self.tags[at][:2] != "NN" and not self._stands_alone(at) and not self._before_figure(at):
            return False
        if self.words[at] in knowledge().reading_verbs or self.words[at] in _READS:
            return False
        return True

    def _before_figure(self, at: int) -> bool:
        """A plural taken for a verb at the start of a breath: "rows half an inch apart"."""
        return self.tags[at] == "VBZ" and self._breaks(at) and at + 1 < len(self.words) and self._in_figure[at + 1]

    def _stands_alone(self, at: int) -> bool:
        """An adjective that is used as a noun: "tighten the eccentric a quarter turn"."""
        if self.tags[at] not in ("JJ", "VBG") or at == 0 or self.tags[at - 1] not in ("DT", "PRP$"):
            return False
        behind = self.tags[at + 1][:2] if at + 1 < len(self.tags) else ""
        return behind in ("DT", "IN", "VB", "PO", "TO", "", ".", ",", "CC") and self.words[at] not in _LOOSE

    def _thing(self, start: int, end: int, found: Found | None) -> Thing | None:
        if end - start > 1 and not found and self.words[end - 1] in knowledge().vague:
            end -= 1
        names = [singular(word) if at == end - start - 1 else word for at, word in enumerate(self.words[start:end])]
        head = names[-1]
        role = found.entry.role if found else "other"
        if found and role == "subject" and found.entry.name not in names:
            names = [found.entry.name]
            head = found.entry.pieces[-1]
        whole = " ".join(names)
        if head in ("bit", "piece") and len(names) == 1 and start and self._in_figure[start - 1]:
            return Thing(start, end, whole, head, "tool" if head == "bit" else "other", "")
        if head.endswith("."):
            return None
        if role == "other" and (head in knowledge().not_things or whole in knowledge().not_things or len(head) < 2 and len(names) < 2):
            return None
        if head in knowledge().not_things and len(names) == 1 and role not in ("part", "subject"):
            return None
        return Thing(start, end, whole, head, role, self._preposition(start))

    def _preposition(self, start: int) -> str:
        at, stop = start - 1, self.clause_start[start]
        if self._breaks(start) and self.tags[at] not in ("IN", "DT", "PRP$", "TO"):
            return ""
        while at >= stop and self.tags[at] in _BEFORE_NOUN and not self._in_figure[at] and self.words[at] not in _NO_PHRASE:
            at -= 1
        return self.words[at] if at >= stop and self.words[at] in _PREPOSITIONS else ""
