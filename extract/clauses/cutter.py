"""Where one clause ends and the next begins.

Each question looks at one token: is there a joining word, a subject, a command, a state, a breath? The first yes cuts.
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.grammar import PARTICLES, grammar
from extract.clauses.puts import puts_next
from extract.clauses.things import thing_at

_CLOSED = frozenset({"IN", "DT", "CC", "TO", "JJ", "CD", "PRP$", "MD", "WRB", "WDT", "WP", "POS", "PDT", "HYPH"})
"""Tags of words that no clause ends on."""
_PREPOSITIONS = frozenset({"along", "round", "around", "over", "through", "across", "under"})
"""Particles that more often begin a phrase of place: "a pencil line along the edge"."""
_PUNCTUATION = frozenset({",", ";", ":", "—", "–", ".", "?", "!", "...", "…", "(", ")", '"'})


class Cutter:
    """Says at each token whether a new piece begins there."""

    def __init__(self, bench: Bench) -> None:
        self._bench = bench
        self._words = grammar()

    def cuts(self, at: int, start: int) -> bool:
        """True where a piece begins at a token, the piece before having begun at `start`."""
        bench = self._bench
        if bench.doc[at].is_sent_start:
            return not self._moved(at, start)
        if bench.word(at) in _PUNCTUATION:
            return False
        if bench.word(at - 1) in _PUNCTUATION - {".", "(", '"'}:
            return True
        if not any(bench.word(k) not in self._words.openers | self._words.leaning for k in range(start, at)):
            return False
        return (
            self._joins(at, start)
            or self._subject(at, start)
            or self._inverted(at)
            or self._command(at, start)
            or self._state(at)
            or puts_next(bench, at, start)
            or self._main(at, start)
            or self._breath(at)
        )

    def _moved(self, at: int, start: int) -> bool:
        """ "in | she goes": the particle first, and what was moved behind it."""
        bench = self._bench
        led = at == start + 1 and bench.word(start) in PARTICLES and bench.word(at) in {"it", "she", "he", "they"}
        return led and bench.word(at + 1) in self._words.movers

    def _joins(self, at: int, start: int) -> bool:
        bench, word = self._bench, self._bench.word(at)
        if word in self._words.subordinators:
            return bench.word(at - 1) not in {"ask", "see", "know", "tell", "what", "as"}
        if word in self._words.half_subordinators:
            return self._clause_follows(at + 1) or (
                word in {"before", "after", "till", "until"} and bench.tag(at + 1) == "VBG"
            )
        if word == "so":
            return bench.word(at - 1) != "or" and (
                self._clause_follows(at + 1)
                or bench.is_bare_verb(at + 1)
                or bench.word(at + 1) == "that"
                or self._placed_follows(at + 1)
            )
        if word == "then":
            return bench.word(at - 1) not in {"and", "but", "so", "by", "till", "until"}
        if word == "and" and self._laid_again(at, start):
            return True
        if word in {"and", "but", "or"}:
            return self._clause_follows(at + 1) or self._verb_follows(at + 1)
        return False

    def _placed_follows(self, at: int) -> bool:
        """ "so out came the reeds", "so bob down a turn"."""
        bench = self._bench
        if bench.word(at) in PARTICLES:
            return bench.word(at + 1) in self._words.movers
        thing = thing_at(bench, at, len(bench))
        return thing is not None and not thing.pronoun and bench.word(thing.end) in PARTICLES | {"with"}

    def _laid_again(self, at: int, start: int) -> bool:
        """ "hair dryer on low | and pegwood in every hole": a second thing with its own place."""
        bench = self._bench
        if any(bench.tag(k) in {"VBZ", "VBP", "VBD", "VB", "MD"} for k in range(start, at)):
            return False
        behind = at + 1
        then = bench.word(behind) == "then"
        thing = thing_at(bench, behind + then, len(bench))
        if thing is None or thing.pronoun:
            return False
        placed = bench.tag(thing.end) == "IN" and bench.word(thing.end) not in {"of", "than", "like"}
        return then or (placed and any(bench.tag(k) == "IN" for k in range(start, at)))

    def _verb_follows(self, at: int) -> bool:
        bench = self._bench
        while bench.word(at) in {"then", "just", "now", "so", "again"} or (
            bench.tag(at) == "RB" and bench.word(at) not in PARTICLES
        ):
            at += 1
        if bench.is_bare_verb(at) or bench.tag(at) in {"VB", "VBP", "VBD", "MD", "VBG"}:
            return True
        return bench.word(at) in PARTICLES and bench.word(at + 1) in self._words.movers

    def _clause_follows(self, at: int) -> bool:
        bench = self._bench
        while bench.tag(at) == "RB" and bench.word(at) not in {"not", "n't"} | PARTICLES:
            at += 1
        if bench.begins_clause(at) or (bench.word(at) in {"i", "we", "he", "they", "she"} and bench.tag(at) == "PRP"):
            return True
        thing = thing_at(bench, at, len(bench))
        if thing is None:
            return False
        behind = thing.end
        if bench.begins_clause(behind):
            return True
        while bench.tag(behind) == "RB" and bench.word(behind) not in PARTICLES:
            behind += 1
        return bench.tag(behind) in {"VBZ", "VBP", "VBD", "MD"} or (
            bench.word(behind) in {"'s", "'re", "'ve", "'ll"} and bench.tag(behind + 1) not in {"NN", "NNS"}
        )

    def _subject(self, at: int, start: int) -> bool:
        bench = self._bench
        before = bench.word(at - 1)
        if not bench.begins_clause(at) or self._moved(
            at, at - 1 if start < at - 1 and self._opens(start, at - 1) else start
        ):
            return False
        if bench.word(at) in {"i", "we"} and before in {"that", "those", "these", "this", "each", "both", "all"}:
            return at == start + 1 or before != "that"
        if before in self._words.governors | self._words.joins | self._words.leaning | self._words.asking:
            return False
        stranded = before in PARTICLES or bench.cue[at] != bench.cue[at - 1]
        return bench.tag(at - 1) not in {"DT", "CC", "TO"} and (bench.tag(at - 1) != "IN" or stranded)

    def _inverted(self, at: int) -> bool:
        bench = self._bench
        return (
            bench.word(at) in PARTICLES | {"there"}
            and bench.word(at + 1) in {"comes", "goes", "go", "come", "came", "went"}
            and bench.tag(at + 2) in {"DT", "PRP$", "JJ", "NN", "NNS"}
            and bench.word(at - 1) not in {"and", "but", "so", "then", "it", "back"}
        )

    def _command(self, at: int, start: int) -> bool:
        bench = self._bench
        if bench.word(at) == "let" and bench.word(at + 1) in {"'s", "me"}:
            return True
        if bench.word(at) in {"do", "never"} and (bench.word(at) == "never" or bench.word(at + 1) in {"n't", "not"}):
            verb = bench.verb(at + 2) if bench.word(at) == "do" else bench.verb(at + 1)
            return (
                verb is not None
                and bench.tag(at - 1) not in {"NNS", "PRP", "WP", "MD", "VBP", "VBZ", "VBD"}
                and bench.word(at - 1) not in self._words.joins
            )
        if not (bench.is_bare_verb(at) or self._bids(at)) or bench.word(at + 1) in {"to"}:
            return False
        before, word = bench.tag(at - 1), bench.word(at - 1)
        pointed = before == "DT" and word in {"this", "that", "these", "those"} and bench.takes_object(at + 1)
        if (
            (before in _CLOSED - {"IN"} and word != "next" and not pointed)
            or before == "VB"
            or word in self._words.bound
        ):
            return False
        if before in {"IN", "RB"} and word not in PARTICLES | {"again", "here", "there", "next", "now", "first"}:
            return False
        if before.startswith("VB") and word not in self._words.reporting | self._words.movers:
            return False
        if before in {"NNS", "NNPS"} and not any(bench.verb(k) or bench.tag(k) == "IN" for k in range(start, at - 1)):
            return False
        if (
            word != before
            and bench.word(at) == "get"
            and before.startswith("NN")
            and bench.cue[at] == bench.cue[at - 1]
        ):
            return False
        if bench.takes_object(at + 1):
            return True
        compound = bench.tag(at) == "NN" and before in {"NN", "NNS", "VBG"} and bench.word(at + 1) in _PREPOSITIONS
        return bench.word(at + 1) in PARTICLES and not compound

    def _bids(self, at: int) -> bool:
        """ "joss stick along the folds | watch the smoke": a verb that is no work begins a command too."""
        bench = self._bench
        idle = bench.tag(at) in {"VB", "VBP"} and bench.words.kind(bench.word(at)) == "idle"
        return idle and bench.takes_object(at + 1) and bench.tag(at - 1) in {"NN", "NNS", "RP"}

    def _main(self, at: int, start: int) -> bool:
        """ "before i do anything | the strings are let down": the main clause behind a leaning one."""
        bench = self._bench
        if bench.word(start) not in self._words.leaning - {"like", "than", "as"} or bench.tag(at) not in {"DT", "PRP$"}:
            return False
        if bench.tag(at - 1) in _CLOSED or bench.tag(at - 1).startswith("VB"):
            return False
        said = any(bench.tag(k) in {"VBP", "VBZ", "VBD", "VBG"} for k in range(start + 1, at))
        return said and self._clause_follows(at)

    def _state(self, at: int) -> bool:
        """ "new head's on | hoop's on": a particle closes one clause, a thing and its state open the next."""
        bench = self._bench
        before = bench.tag(at - 1)
        if before in _CLOSED - {"IN"} or (before == "IN" and bench.word(at - 1) not in PARTICLES):
            return False
        if before.startswith("VB") and bench.words.kind(bench.doc[at - 1].lemma_) != "idle":
            return False
        if bench.is_noun(at - 1) and bench.is_noun(at):
            return False
        thing = thing_at(bench, at, len(bench))
        return (
            thing is not None
            and bench.word(thing.end) in {"'s", "is", "are", "'re"}
            and bench.word(thing.end + 1) in PARTICLES - {"up", "down"}
        )

    def _opens(self, start: int, end: int) -> bool:
        return all(self._bench.word(k) in self._words.openers for k in range(start, end))

    def _closed_before(self, at: int) -> bool:
        """True where the noun phrase before this token is done."""
        before = self._bench.tag(at - 1)
        if before == "JJ":
            return self._bench.tag(at - 2) in {"VBZ", "VBP", "VBD", "RB", "POS"}
        return before not in {"CD", "NN"}

    def _breath(self, at: int) -> bool:
        """At a cue's border, where the words behind could stand alone."""
        bench = self._bench
        if bench.cue[at] == bench.cue[at - 1] or bench.tag(at - 1) in _CLOSED - {"IN", "CD", "JJ"}:
            return False
        stranded = bench.word(at - 1) in {"before", "after", "since", "though"}
        if bench.tag(at - 1) == "IN" and bench.word(at - 1) not in PARTICLES and not stranded:
            return False
        if bench.tag(at) in {"VB", "VBG", "VBD", "VBN"} or bench.is_bare_verb(at):
            return True
        if bench.tag(at) == "VBZ" and bench.plural_lead(at) and bench.word(at + 1) in PARTICLES:
            return True
        thing = thing_at(bench, at, len(bench))
        if thing is None or thing.pronoun:
            return self._clause_follows(at)
        anew = bench.tag(at) in {"DT", "PRP$", "CD"} and bench.tag(at - 1) in {"NN", "NNS"}
        return self._clause_follows(at) or anew or self._closed_before(at)
