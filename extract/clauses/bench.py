"""A narration as clauses are read from it: each token's verb form, and the trade's own terms.

The parse of raw captions is often wrong about who does what, so clauses are read from tags, word forms and word order;
the lemmatiser and the tagger are asked, the tree is not.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Literal

from extract.clauses.grammar import PARTICLES, grammar
from extract.clauses.talk import talk
from extract.clauses.terms import TermKind, Terms, TermSpan
from extract.clauses.words import BenchWords, bench_words
from extract.narration import narration_of
from extract.spans import Measured
from extract.trade import Trade

if TYPE_CHECKING:
    from spacy.tokens import Doc, Token

Form = Literal["base", "ing", "past", "s"]

_FORM_OF_TAG: dict[str, Form] = {"VB": "base", "VBP": "base", "VBG": "ing", "VBD": "past", "VBN": "past", "VBZ": "s"}
_FINITE = frozenset({"VBP", "VBZ", "VBD", "MD"})
_BEFORE_NOUN = frozenset({"DT", "PRP$", "JJ"})


@dataclass(frozen=True, slots=True)
class Verb:
    """A token read as a verb."""

    at: int
    lemma: str
    form: Form
    tagged: bool
    """True where the tagger says verb, False where only the word lists do."""


class Bench:
    """The tokens of one narration with the trade's terms marked."""

    def __init__(
        self, doc: Doc, trade: Trade, measures: tuple[Measured, ...] = (), words: BenchWords | None = None
    ) -> None:
        self.doc = doc
        self.words = words or bench_words()
        self.narration = narration_of(doc)
        self.cue = self.narration.cue
        self.lower = tuple(token.lower_ for token in doc)
        self._size = len(self.lower)
        self._tags = tuple(token.tag_ for token in doc)
        self._trade = trade
        self._ends = {one.quantity.start: one.quantity.end for one in measures}
        self.phases = {one.quantity.start: one.phase for one in measures}
        """The token at which a measure begins -> found, aimed at, reached or general."""
        self._units = {one.quantity.start: one.quantity.unit.kind for one in measures if one.quantity.unit is not None}

    def __len__(self) -> int:
        return self._size

    @cached_property
    def terms(self) -> dict[int, TermSpan]:
        """Token -> the longest trade term that begins there."""
        return Terms(self._trade).find(self.lower)

    @cached_property
    def term_kind(self) -> tuple[TermKind | None, ...]:
        """Kind of trade term that each token is part of, or null."""
        kinds: list[TermKind | None] = [None] * len(self)
        for at, term in self.terms.items():
            for k in range(at, term.end):
                kinds[k] = term.kind if kinds[k] is None or term.end - at > 1 else kinds[k]
        return tuple(kinds)

    @cached_property
    def in_long_term(self) -> frozenset[int]:
        """Tokens of terms of several words: "steel" and "wool"."""
        return frozenset(k for at, term in self.terms.items() if term.end - at > 1 for k in range(at, term.end))

    @cached_property
    def inside_term(self) -> frozenset[int]:
        """Tokens that are in a term of several words, its first one left out: "glue" in "hide glue"."""
        return frozenset(k for at, term in self.terms.items() for k in range(at + 1, term.end))

    def unit_kinds(self, start: int, end: int) -> frozenset[str]:
        """Kinds of unit of the measures that begin among the tokens: "torque", "length"."""
        return frozenset(self._units[at] for at in range(start, end) if at in self._units)

    def measure_end(self, at: int) -> int | None:
        """The token behind the measure that begins at a token, null where none begins."""
        return self._ends.get(at)

    def word(self, at: int) -> str:
        """Lower-case word at a token, "" beyond the end."""
        return self.lower[at] if 0 <= at < self._size else ""

    def tag(self, at: int) -> str:
        """Part-of-speech tag at a token, "" beyond the end."""
        return self._tags[at] if 0 <= at < self._size else ""

    def is_noun(self, at: int) -> bool:
        """True for a noun by its tag or by the trade's lists, where it isn't used as a verb."""
        if not 0 <= at < len(self) or self.is_exclamation(at):
            return False
        if self.lower[at] == "none" or self._tags[at] == "VBZ":
            return self.lower[at] != "none" and self.plural_lead(at)
        if at in self.in_long_term or (self.tag(at) in {"VB", "VBP", "NN"} and self.tag(at - 1) in {"DT", "PRP$"}):
            return True
        return self.tag(at) in {"NN", "NNS", "NNP", "NNPS"} or (
            self.term_kind[at] is not None and self.tag(at) not in {"RP", "IN", "RB"} and self._noun_by_place(at)
        )

    def begins_breath(self, at: int) -> bool:
        """True for the first token of a cue or sentence."""
        return at == 0 or self.cue[at] != self.cue[at - 1] or bool(self.doc[at].is_sent_start)

    def plural_lead(self, at: int) -> bool:
        """The tagger calls plural nouns without a verb -s forms: "heads off", "Leads bent", "cones down"."""
        if self.tag(at - 1).startswith("NN") and not self.begins_breath(at):
            return False
        leads = self.begins_breath(at) or self.lower[at - 1] in {",", "and", "then", "now"}
        state = self.word(at + 1) in PARTICLES or self.tag(at + 1) in {"VBN", "JJ"}
        return (leads and state) or self.term_kind[at] is not None

    def is_exclamation(self, at: int) -> bool:
        """ "lord", "man" said by themselves; not "the man"."""
        return self.lower[at] in talk().exclamations and self.tag(at - 1) not in _BEFORE_NOUN

    def _noun_by_place(self, at: int) -> bool:
        """A term that the tagger calls a verb is a noun where no object follows: "chassis out", "felt feet on"."""
        if self.tag(at) not in {"VB", "VBP", "VBD"}:
            return True
        followed = self.tag(at + 1) in {"NN", "NNS", ",", ".", ""}
        return followed or (self.word(at + 1) in PARTICLES and not self.takes_object(at + 2))

    def verb(self, at: int) -> Verb | None:
        """The token as a verb, or null where it can't be one."""
        if not 0 <= at < len(self):
            return None
        if self.lower[at] in PARTICLES and self.lower[at] not in self.words.work:
            commands = self.tag(at) == "VB" and self.begins_breath(at) and self.takes_object(at + 1)
            return Verb(at, self.lower[at], "base", tagged=True) if commands else None
        pair = self._pair(at)
        if pair is not None:
            return pair
        token, word = self.doc[at], self.lower[at]
        form = _FORM_OF_TAG.get(token.tag_)
        if form == "s" and self.plural_lead(at):
            return None
        if form == "ing" and word in self.words.work:
            form = "base"
        if form == "past" and (word in self.words.same_past or self._is_own_base(at)):
            form = "base"
        if self.term_kind[at] is not None and self._term_is_noun(at, form):
            return None
        if form and (token.lemma_ in grammar().auxiliaries or "'" in word) and not self._has_object(at):
            return None
        if form:
            return Verb(at, self._base(token, form), form, tagged=True)
        if self.words.knows(word):
            return Verb(at, word, "base", tagged=False)
        if token.tag_ == "NN" and self.takes_object(at + 1) and self._begins_command(at):
            return Verb(at, word, "base", tagged=True)
        endings: tuple[tuple[str, Form], ...] = (("ing", "ing"), ("ed", "past"))
        for ending, form_here in endings:
            stem = self._stem(word, ending)
            if stem:
                return Verb(at, stem, form_here, tagged=False)
        return None

    def _is_own_base(self, at: int) -> bool:
        """ "and saw outside the line": a past form that is a verb of work too, where no subject stands before it."""
        return self.lower[at] in self.words.work and self.tag(at - 1) in {"CC", "RB", ",", ".", ""}

    def _begins_command(self, at: int) -> bool:
        """True for a noun by its tag that can only be a verb: "tip the oil out", "gap it", not "today the can is"."""
        pronoun = self.word(at + 1) in {"it", "them"}
        return (self.begins_breath(at) and (pronoun or self.lower[at] not in self.words.nouns)) or (
            pronoun and self.lower[at - 1] in {"and", "then", ","}
        )

    def _pair(self, at: int) -> Verb | None:
        """ "dry fit the spindles": a verb of two words."""
        pair = f"{self.lower[at]} {self.word(at + 1)}"
        known = pair in self.words.work and self.word(at + 1) not in PARTICLES
        return Verb(at + 1, pair, "base", tagged=False) if known and self.tag(at - 1) not in _BEFORE_NOUN else None

    def _term_is_noun(self, at: int, form: Form | None) -> bool:
        if form == "base" and self.tag(at - 1) in {"PRP", "MD", "TO"}:
            return False
        if self.word(at + 1) in PARTICLES and not self.takes_object(at + 2):
            return True
        if form in ("ing", "s"):
            return not self.takes_object(at + 1)
        return form in ("base", "past") and self.tag(at + 1) in {"NN", "NNS"}

    def is_bare_verb(self, at: int) -> bool:
        """True for a base form that could begin a command: "file it", "slide the keeper on".

        A noun that is also a verb counts only with an object behind it.
        """
        verb = self.verb(at)
        if verb is None or self.words.kind(verb.lemma) == "idle" or at in self.inside_term:
            return False
        if f"{self.word(at - 1)} {self.lower[at]}" in self.words.tool_verbs:
            return False
        if verb.form == "base" and self.doc[at].tag_ == "VB":
            return self.term_kind[at] is None or self.takes_object(at + 1)
        if self.takes_object(at + 1):
            return verb.form == "base" or self.words.knows(self.lower[at])
        if self.words.kind(self.lower[at], self.word(at + 1)) != "work":
            return False
        after = self.word(at + 1)
        if after in PARTICLES:
            return verb.form == "base" and (verb.tagged or self.takes_object(at + 2))
        return self.doc[at].tag_ == "VBP" and self.tag(at + 1) in {"CD", "NN", "NNS", "JJ"}

    def _has_object(self, at: int) -> bool:
        """ "do a dry run", "i had them off": an auxiliary used as a verb of its own."""
        return self.doc[at].lemma_ in {"do", "have"} and "'" not in self.lower[at] and self.takes_object(at + 1)

    def takes_object(self, at: int) -> bool:
        """True where an object begins that no noun before it could carry: "the", "my", "it", "them"."""
        if self.tag(at) == "DT" and any(self.words.nouns.get(self.word(k)) == "measure" for k in (at + 1, at + 2)):
            return False
        return self.tag(at) in {"DT", "PRP$"} or (
            self.word(at) in grammar().object_pronouns and not self.begins_clause(at)
        )

    def begins_clause(self, at: int) -> bool:
        """True where a subject pronoun stands before a finite verb: "it sounds", "there's", "that is"."""
        words, word = grammar(), self.word(at)
        if word not in words.subjects and word not in words.pointers:
            return False
        behind = at + 2 if self.word(at + 1) == "else" else at + 1
        while behind < at + 3 and self.tag(behind) == "RB" and self.word(behind) not in {"n't", "not"}:
            behind += 1
        if word in words.pointers:
            return self.word(behind) in words.pointers[word]
        if self.word(behind) in words.finite:
            return True
        return self.tag(behind) in _FINITE and not (word in words.singular_subjects and self.tag(behind) == "VBP")

    def _base(self, token: Token, form: Form) -> str:
        lemma = _undoubled(token.lower_, token.lemma_.lower())
        if token.lower_ in self.words.irregular and (form == "past" or token.tag_ == "VBP"):
            return self.words.irregular[token.lower_]
        if form == "base":
            return token.lower_
        if form in ("ing", "past") and not self.words.knows(lemma):
            return self._stem(token.lower_, "ing" if form == "ing" else "ed") or lemma
        if form in ("ing", "past") and lemma == token.lower_:
            return self._stem(token.lower_, "ing" if form == "ing" else "ed") or lemma
        return lemma

    def _stem(self, word: str, ending: str) -> str | None:
        if not word.endswith(ending) or len(word) < len(ending) + 2:
            return None
        stem = word[: -len(ending)]
        for base in (stem, stem + "e", stem[:-1] if stem[-1:] == stem[-2:-1] else stem):
            if self.words.knows(base):
                return base
        return None


def _undoubled(word: str, lemma: str) -> str:
    """ "gutted" is gut, where the lemmatiser says "gutte"."""
    doubled = lemma.endswith("e") and word == lemma + "d" and len(lemma) > 3 and lemma[-2] == lemma[-3]
    return lemma[:-2] if doubled and lemma[-2] in "bdgmnprt" else lemma
