"""A narration as the rules see it."""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Mapping
from fractions import Fraction

from spacy.tokens import Doc

from extract.numbers.figure import Tape
from extract.quantities.draft import Draft
from extract.quantities.knowledge import knowledge
from extract.quantities.topics import Topics, find_topics
from extract.spans import Unit
from extract.trade import Trade
from extract.units import System


class Scene:
    """A narration as the rules see it: lexemes, drafts, and where clauses and sentences lie."""

    def __init__(self, doc: Doc, tape: Tape, trade: Trade) -> None:
        self.doc = doc
        self.tape = tape
        self.trade = trade
        narration = doc._.narration
        self._cue = narration.cue if narration else (0,) * len(doc)
        self.punctuated = bool(narration and narration.punctuated)
        self._sentence = self._number_sentences()
        self._bounds = self._bound_sentences()
        self._vocabulary = frozenset(lexeme.text for lexeme in tape.lexemes)
        self.said_systems: dict[System, int] = {"metric": 0, "imperial": 0}
        """How many units of each system are said in the narration."""
        self.said_scales: frozenset[str] = frozenset()
        """Temperature scales said in the narration."""
        self.bands = {attribute.name: attribute.bands for attribute in trade.attributes}
        """Where figures usually lie, by attribute."""
        self.units_said: tuple[Unit, ...] = ()
        """Every unit that is said in the narration, once."""
        self._shares: dict[str, float] = {}
        self._number_starts: list[int] = []
        self.sides: frozenset[int] = frozenset()
        """Starts of the numbers that are joined by "by": the sides of a thing."""
        self._drafts: dict[int, Draft] = {}
        self._values: list[Fraction] = []
        self._number_ends: frozenset[int] = frozenset()
        self._nouns: dict[int, frozenset[str]] = {}
        self._idioms: dict[int, list[tuple[int, int]]] = {}
        for start, end in knowledge().idioms.spans(tape):
            for at in range(start, end):
                self._idioms.setdefault(at, []).append((start, end))
        self.topics = Topics(find_topics(doc, tape, trade))

    def _number_sentences(self) -> list[int]:
        numbers, current = [], 0
        for token in self.doc:
            if token.is_sent_start:
                current += 1
            numbers.append(current)
        return numbers

    def learn(self, drafts: tuple[Draft, ...], systems: Mapping[System, int]) -> None:
        """Take in what the units that are said show of the speaker's habits."""
        self.said_systems = dict(systems)
        units = {draft.unit.name for draft in drafts if draft.unit and draft.unit.kind == "temperature"}
        self.said_scales = frozenset(units) or self._scales_named()
        self._number_starts = [draft.start for draft in drafts]
        self._drafts = {draft.start: draft for draft in drafts}
        self._values = [draft.number.value for draft in drafts]
        self._number_ends = frozenset(draft.end for draft in drafts)
        said = Counter(draft.unit.name for draft in drafts if draft.unit)
        self.units_said = tuple({draft.unit.name: draft.unit for draft in drafts if draft.unit}.values())
        self._shares = {name: count / said.total() for name, count in said.items()}

    @property
    def share_metric(self) -> float:
        """The share of metric units among all that are said and have a system, 0 to 1."""
        metric, both = self.said_systems["metric"], sum(self.said_systems.values())
        return metric / both if both else 0.0

    def _scales_named(self) -> frozenset[str]:
        """Scales named without a figure: "it's Fahrenheit, of course"."""
        names = {"fahrenheit": "degF", "celsius": "degC", "centigrade": "degC"}
        return frozenset(names[word] for word in self._vocabulary & names.keys())

    def hear(self, draft: Draft) -> None:
        """Keep the scale of the first temperature whose scale was settled, where none is said."""
        if draft.unit and draft.unit.kind == "temperature" and not self.said_scales:
            self.said_scales = frozenset({draft.unit.name})

    def share_of(self, unit: Unit) -> float:
        """The share of a unit among all units said, 0 to 1."""
        return self._shares.get(unit.name, 0.0)

    def draft_before(self, draft: Draft) -> Draft | None:
        """The number before a number."""
        place = bisect_left(self._number_starts, draft.start)
        return self._drafts[self._number_starts[place - 1]] if place else None

    def draft_at(self, start: int) -> Draft | None:
        """The number that begins at lexeme `start`."""
        return self._drafts.get(start)

    def values_before(self, draft: Draft, count: int) -> list[Fraction]:
        """Values of the last numbers before a draft."""
        place = bisect_left(self._number_starts, draft.start)
        return self._values[max(0, place - count) : place]

    def number_at(self, start: int, end: int) -> bool:
        """True where a number begins at or behind lexeme `start` and before `end`."""
        place = bisect_left(self._number_starts, start)
        return place < len(self._number_starts) and self._number_starts[place] < end

    def ends_clause(self, at: int) -> bool:
        """True where a mark, a new breath or the end stands at lexeme `at`."""
        return at >= len(self.tape) or self.tape.is_stop(at) or self.tape.lexemes[at].breath

    def ends_number(self, at: int) -> bool:
        """True where a number, its unit included, ends right before lexeme `at`."""
        return at in self._number_ends

    def governs(self, end: int, draft: Draft) -> bool:
        """True where only small words stand between a phrase that ends at `end` and the number."""
        if not 0 <= draft.start - end <= 4:
            return False
        return all(self.tape.text(at) in knowledge().evidence.between for at in range(end, draft.start))

    def attributes(self, draft: Draft) -> frozenset[str]:
        """Names of the attributes that are named right before a draft."""
        near = self.topics.between(draft.start - 8, draft.start)
        return frozenset(hit.topic.name for hit in near if hit.topic.role == "name" and self.governs(hit.end, draft))

    def head(self, draft: Draft) -> frozenset[str]:
        """Lemmas of the nouns right before a draft."""
        low = max(0, draft.start - 4)
        return frozenset(
            self.doc[self.tape.lexemes[at].token].lemma_ for at in range(low, draft.start) if self.tape.is_noun(at)
        )

    def nouns(self, draft: Draft) -> frozenset[str]:
        """Lemmas of the nouns beside a draft, its unit left out."""
        if draft.start not in self._nouns:
            low, high = max(0, draft.start - 10), min(len(self.tape), draft.end + 6)
            self._nouns[draft.start] = frozenset(
                self.doc[self.tape.lexemes[at].token].lemma_
                for at in (*range(low, draft.start), *range(draft.end, high))
                if self.tape.is_noun(at)
            )
        return self._nouns[draft.start]

    def idioms_at(self, at: int) -> list[tuple[int, int]]:
        """Start and end of the idioms that take in lexeme `at`."""
        return self._idioms.get(at, [])

    def _bound_sentences(self) -> dict[int, tuple[int, int]]:
        bounds: dict[int, tuple[int, int]] = {}
        for at in range(len(self.tape)):
            number = self.sentence(at)
            bounds[number] = (bounds[number][0] if number in bounds else at, at + 1)
        return bounds

    def cue(self, at: int) -> int:
        """Cue of lexeme `at`."""
        return self._cue[self.tape.lexemes[at].token]

    def sentence(self, at: int) -> int:
        """Running number of the sentence of lexeme `at`."""
        return self._sentence[self.tape.lexemes[at].token]

    def sentence_bounds(self, at: int) -> tuple[int, int]:
        """First lexeme and end of the sentence of lexeme `at`."""
        return self._bounds[self.sentence(at)]

    def left(self, at: int, count: int) -> list[str]:
        """Texts of up to `count` lexemes before `at`, in order."""
        return [one.text for one in self.tape.lexemes[max(0, at - count) : at]]

    def right(self, at: int, count: int) -> list[str]:
        """Texts of up to `count` lexemes from `at`, in order."""
        return [one.text for one in self.tape.lexemes[at : at + count]]

    def says_any(self, words: frozenset[str]) -> bool:
        """True where any of the words is said in the narration."""
        return not self._vocabulary.isdisjoint(words)

    def near(self, draft: Draft, count: int) -> set[str]:
        """Texts of up to `count` lexemes to either side."""
        return set(self.left(draft.start, count) + self.right(draft.end, count))

    def tag(self, at: int) -> str:
        """Part-of-speech tag of lexeme `at`, empty outside."""
        return self.doc[self.tape.lexemes[at].token].tag_ if 0 <= at < len(self.tape) else ""

    def around(self, draft: Draft) -> set[str]:
        """Texts of the draft's sentence, at most 25 lexemes to either side."""
        low, high = max(0, draft.start - 25), min(len(self.tape), draft.end + 25)
        here = self.sentence(draft.start)
        return {self.tape.text(at) for at in range(low, high) if self.sentence(at) == here}
