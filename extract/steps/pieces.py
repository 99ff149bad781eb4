"""Clauses: the stretches of a narration that say one thing.

Takes "coil it down | slide the keeper on | hook it on the arbor | and last winter i said ..."; refuses a cut inside
"let it walk" or "ask me how i know".
"""

from __future__ import annotations

from dataclasses import dataclass

from extract.steps.bench import PARTICLES, Bench
from extract.steps.things import thing_at

_ALWAYS = frozenset(
    {
        "because",
        "cos",
        "'cause",
        "unless",
        "if",
        "when",
        "while",
        "where",
        "which",
        "who",
        "whose",
        "although",
        "though",
        "whereas",
        "whenever",
        "once",
    }
)
_WITH_CLAUSE = frozenset({"till", "until", "before", "after", "since", "as", "like", "than"})
_JOINS = frozenset({"and", "but", "or", "then", "so"})
_SKIPPED = frozenset(
    {
        "and",
        "then",
        "now",
        "so",
        "but",
        "well",
        "right",
        "ok",
        "okay",
        "alright",
        "oh",
        "next",
        "just",
        "also",
        "first",
        "yes",
        "yeah",
        "no",
        "um",
        "uh",
        "er",
        "like",
        "anyway",
        "actually",
        "please",
        "gently",
        "carefully",
        "slowly",
        "all",
        "maybe",
        "still",
        "only",
        "always",
        "simply",
        "quickly",
        "lightly",
        ",",
        "there",
        "finally",
        "lastly",
        "again",
        "or",
        "man",
        "lord",
    }
)
_WH = frozenset(
    {
        "what",
        "how",
        "why",
        "whatever",
        "whoever",
        "where",
        "whether",
        "that",
        "sure",
        "which",
        "who",
        "when",
        "mind",
        "see",
        "check",
    }
)
_ASKING = frozenset(
    {
        "'ve",
        "have",
        "do",
        "did",
        "does",
        "am",
        "are",
        "is",
        "was",
        "can",
        "could",
        "will",
        "would",
        "should",
        "of",
        "with",
    }
)
_REPORTING = frozenset({"know", "think", "say", "said", "guess", "see", "mean", "reckon", "thought", "knew"})
_BOUND = frozenset({"i", "we", "you", "they", "to", "not", "n't", "let", "help", "'s"})
_CLOSED = frozenset({"IN", "DT", "CC", "TO", "JJ", "CD", "PRP$", "MD", "WRB", "WDT", "WP", "POS", "PDT"})
_PUNCTUATION = frozenset({",", ";", ":", "—", "–", ".", "?", "!", "...", "…", "(", ")", '"'})


@dataclass(frozen=True, slots=True)
class Piece:
    """Tokens `start` to `end`; `joiner` is the word that ties it to what came before, "" where there is none.

    `lead` is the first token behind joiner, openers and adverbs.
    """

    start: int
    end: int
    joiner: str
    lead: int
    sentence: int

    @property
    def leans(self) -> bool:
        """True where the piece only says when, why or how long."""
        return self.joiner in _ALWAYS | _WITH_CLAUSE


def pieces_of(bench: Bench) -> tuple[Piece, ...]:
    """The pieces of a narration, in order, every token in exactly one. Linear in the number of tokens."""
    cutter = _Cutter(bench)
    starts = [0] if len(bench) else []
    for at in range(1, len(bench)):
        if cutter.cuts(at, starts[-1]):
            starts.append(at)
    pieces = []
    sentence = 0
    for start, end in zip(starts, [*starts[1:], len(bench)], strict=True):
        if start and bench.doc[start].is_sent_start:
            sentence += 1
        pieces.append(_piece(bench, start, end, sentence))
    return tuple(pieces)


def _piece(bench: Bench, start: int, end: int, sentence: int) -> Piece:
    word = bench.word(start)
    joiner = word if word in _ALWAYS | _JOINS or (word in _WITH_CLAUSE and end - start > 1) else ""
    if word in {"and", "but"} and bench.word(start + 1) in _ALWAYS | {"before", "after", "till", "until"}:
        joiner = bench.word(start + 1)
    lead = start
    while lead < end - 1 and (bench.word(lead) in _SKIPPED | _ALWAYS or (lead == start and joiner)):
        inverted = bench.word(lead) in PARTICLES | {"there"} and bench.word(lead + 1) in {
            "goes",
            "comes",
            "go",
            "come",
            "came",
            "went",
        }
        if bench.begins_clause(lead) or inverted:
            break
        lead += 1
    return Piece(start, end, joiner, lead, sentence)


class _Cutter:
    """Says at each token whether a new piece begins there."""

    def __init__(self, bench: Bench) -> None:
        self._bench = bench

    def cuts(self, at: int, start: int) -> bool:
        bench = self._bench
        if bench.doc[at].is_sent_start:
            return True
        if bench.word(at) in _PUNCTUATION:
            return False
        if bench.word(at - 1) in _PUNCTUATION - {".", "(", '"'}:
            return True
        if not any(bench.word(k) not in _SKIPPED | _ALWAYS | _WITH_CLAUSE for k in range(start, at)):
            return False
        return (
            self._joins(at)
            or self._subject(at)
            or self._inverted(at)
            or self._command(at, start)
            or self._state(at)
            or self._breath(at)
        )

    def _joins(self, at: int) -> bool:
        bench, word = self._bench, self._bench.word(at)
        if word in _ALWAYS:
            return bench.word(at - 1) not in {"ask", "see", "know", "tell", "what", "as"}
        if word in _WITH_CLAUSE:
            return self._clause_follows(at + 1) or (
                word in {"before", "after", "till", "until"} and bench.tag(at + 1) == "VBG"
            )
        if word == "so":
            return bench.word(at - 1) != "or" and (
                self._clause_follows(at + 1) or bench.is_bare_verb(at + 1) or bench.word(at + 1) == "that"
            )
        if word == "then":
            return bench.word(at - 1) not in {"and", "but", "so", "by", "till", "until"}
        if word in {"and", "but", "or"}:
            return self._clause_follows(at + 1) or self._verb_follows(at + 1)
        return False

    def _verb_follows(self, at: int) -> bool:
        bench = self._bench
        while bench.word(at) in {"then", "just", "now", "so", "again"} or (
            bench.tag(at) == "RB" and bench.word(at) not in PARTICLES
        ):
            at += 1
        if bench.is_bare_verb(at) or bench.tag(at) in {"VB", "VBP", "VBD", "MD", "VBG"}:
            return True
        return bench.word(at) in PARTICLES and bench.word(at + 1) in {"comes", "goes", "go", "come"}

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

    def _subject(self, at: int) -> bool:
        bench = self._bench
        before = bench.word(at - 1)
        if not bench.begins_clause(at) or before in _WH | _JOINS | _ALWAYS | _WITH_CLAUSE | _ASKING:
            return False
        if bench.word(at) in {"i", "we"} and before in {"that", "those", "these", "this", "each", "both", "all"}:
            return True
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
        if bench.word(at) == "let" and bench.word(at + 1) == "'s":
            return True
        if bench.word(at) in {"do", "never"} and (bench.word(at) == "never" or bench.word(at + 1) in {"n't", "not"}):
            verb = bench.verb(at + 2) if bench.word(at) == "do" else bench.verb(at + 1)
            return (
                verb is not None
                and bench.tag(at - 1) not in {"NNS", "PRP", "WP", "MD", "VBP", "VBZ", "VBD"}
                and bench.word(at - 1) not in _JOINS
            )
        if not bench.is_bare_verb(at) or bench.word(at + 1) in {"to"}:
            return False
        before, word = bench.tag(at - 1), bench.word(at - 1)
        if (before in _CLOSED - {"IN"} and word != "next") or before == "VB" or word in _BOUND:
            return False
        if before in {"IN", "RB"} and word not in PARTICLES | {"again", "here", "there", "next", "now", "first"}:
            return False
        if before.startswith("VB") and word not in _REPORTING:
            return False
        if before in {"NNS", "NNPS"} and not any(bench.verb(k) or bench.tag(k) == "IN" for k in range(start, at - 1)):
            return False
        return bench.takes_object(at + 1) or bench.word(at + 1) in PARTICLES

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
        if bench.tag(at - 1) == "IN" and bench.word(at - 1) not in PARTICLES:
            return False
        if bench.tag(at) in {"VB", "VBG", "VBD", "VBN"} or bench.is_bare_verb(at):
            return True
        return self._clause_follows(at) or (bench.tag(at) in {"NN", "NNS", "JJ"} and self._closed_before(at))
