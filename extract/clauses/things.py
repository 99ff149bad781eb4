"""Noun phrases, read from tags and the trade's terms.

Takes "the broke spindles", "a three cornered file", "somebody's old hoop", "each one", "it"; refuses "on the bench"
(a phrase of place begins behind its preposition).
"""

from __future__ import annotations

from dataclasses import dataclass

from extract.clauses.bench import Bench
from extract.clauses.grammar import PARTICLES, grammar

_BEFORE_NOUN = frozenset({"PDT", "DT", "PRP$", "CD", "JJ", "JJR", "JJS", "VBN", "VBG", "POS", "HYPH"})
_LOOSE_PRONOUNS = grammar().object_pronouns | {"they", "she", "all", "everything", "most"}
_REACH = 9
_STANDING_IN = frozenset({"one", "ones", "others", "lot", "rest"})
_VAGUE = frozenset({"a", "the", "good", "wee", "little", "tiny", "fair", "quick", "wild", "old"})
_QUANTIFIERS = frozenset(
    {("a", word) for word in ("bit", "hair", "touch", "shade", "tad", "little", "fraction", "lot", "smidge", "whisker")}
)


@dataclass(frozen=True, slots=True)
class Thing:
    """A noun phrase: tokens `start` to `end`, `head` its main noun or pronoun."""

    start: int
    end: int
    head: int
    pronoun: bool = False


def thing_at(bench: Bench, at: int, limit: int) -> Thing | None:
    """The noun phrase that begins at a token and ends by `limit`, or null."""
    stop = min(limit, at + _REACH, len(bench))
    if at >= stop:
        return None
    if bench.word(at) in _LOOSE_PRONOUNS and not _goes_on(bench, at + 1, stop):
        end = at + 2 if bench.word(at + 1) in {"one", "else"} and at + 1 < stop else at + 1
        return Thing(at, end, at, pronoun=True)
    if bench.tag(at) == "PRP":
        return None
    here, head = at, None
    while here < stop:
        if bench.tag(here - 1) == "HYPH" and here > at and bench.doc[here].is_alpha:
            head, here = here, here + 1
            continue
        if here > at and _is_over(bench, here, head):
            break
        if bench.is_noun(here) and not (here > at and _is_verb_here(bench, here, stop)):
            head = here
        elif not _may_stand_before(bench, here, stop) or (head is not None and bench.tag(here) not in {"POS", "HYPH"}):
            break
        here += 1
    if head is None and here > at + 1 and bench.tag(at) == "DT" and bench.tag(here - 1) not in {"DT", "CD", "RB"}:
        head = here - 1
    if head is None:
        return None
    return Thing(at, head + 1, head, pronoun=bench.word(head) in _STANDING_IN)


def _is_over(bench: Bench, here: int, head: int | None) -> bool:
    """True where a particle or a breath ends the phrase: "head | back a sixteenth", "too keen | bellows tape"."""
    if bench.word(here) in PARTICLES and bench.tag(here) in {"RB", "RP", "IN"} and here not in bench.inside_term:
        return True
    breath = bench.cue[here] != bench.cue[here - 1]
    return breath and (head is not None or bench.tag(here - 1) not in {"DT", "PRP$", "CD", "POS"})


def _goes_on(bench: Bench, at: int, stop: int) -> bool:
    if bench.word(at - 1) in {"it", "them", "they", "she", "her", "him"} and bench.tag(at - 1) != "PRP$":
        return False
    return (
        at < stop
        and (bench.is_noun(at) or bench.tag(at) in {"JJ", "VBN", "CD"})
        and bench.word(at) not in {"one", "else"}
    )


def _is_verb_here(bench: Bench, at: int, stop: int) -> bool:
    """A noun-like word inside the run that begins a command: "wet rag | get the bead off"."""
    return at + 1 < stop and bench.tag(at - 1) not in {"DT", "PRP$", "CD"} and bench.is_bare_verb(at)


def _may_stand_before(bench: Bench, at: int, stop: int) -> bool:
    tag, word = bench.tag(at), bench.word(at)
    if word in PARTICLES and tag not in {"JJ"}:
        return False
    if tag == "POS" or word == "'s":
        return (bench.is_noun(at + 1) and bench.tag(at + 1) != "VBN") or bench.tag(at + 1) in {"JJ", "CD"}
    if tag in {"VBN", "VBG"}:
        return at + 1 < stop and (bench.is_noun(at + 1) or bench.tag(at + 1) == "JJ")
    if tag == "RB":
        return at + 1 < stop and bench.tag(at + 1) in {"JJ", "VBN"} and word not in {"n't", "not", "then", "now", "so"}
    if word == "-" or (word in {"ought", "aught", "nought", "oh"} and bench.tag(at - 1) == "CD"):
        return True
    return tag in _BEFORE_NOUN


def name_of(bench: Bench, thing: Thing) -> str:
    """The head noun with the nouns that belong to it: "tailpiece cover", "hide glue"; a pronoun gives ""."""
    if thing.pronoun:
        return "everything" if bench.word(thing.head) == "everything" else ""
    start = thing.head
    for at in range(thing.start, thing.head):
        end = term.end if (term := bench.terms.get(at)) else 0
        if end == thing.head + 1:
            start = at
            break
    while start > thing.start and bench.is_noun(start - 1) and thing.head - start < 2:
        start -= 1
    name = " ".join(bench.lower[start : thing.head + 1]).replace(" - ", "-")
    if bench.word(thing.head + 1) == "of" and bench.word(thing.head) in bench.words.part_of:
        whole = thing_at(bench, thing.head + 2, len(bench))
        if whole is not None and not whole.pronoun:
            return f"{name} of {name_of(bench, whole)}"
    return name


def extent(bench: Bench, thing: Thing, limit: int) -> int:
    """Where a noun phrase ends with its phrases of place: "the gasket between the ends"."""
    end = thing.end
    while end < limit and bench.tag(end) == "IN":
        inner = thing_at(bench, end + 1, limit)
        if inner is None:
            break
        end = inner.end
    return end


def with_whole(bench: Bench, thing: Thing, limit: int) -> Thing:
    """ "the end of the shank" as one thing, its head the end."""
    if bench.word(thing.end) == "of":
        inner = thing_at(bench, thing.end + 1, limit)
        if inner is not None and not inner.pronoun:
            return Thing(thing.start, inner.end, thing.head, thing.pronoun)
    return thing


def kind_of(bench: Bench, thing: Thing) -> str:
    """ "part", "tool" or "material" by the trade, "people", "time" ... by the word list, else "thing" or "pronoun"."""
    if thing.pronoun:
        return "pronoun"
    if bench.words.nouns.get(bench.word(thing.head)) == "body":
        if bench.tag(thing.start) == "PRP$":
            return "body"
        return bench.term_kind[thing.head] or "thing"
    if bench.lower[thing.start : thing.end] in _QUANTIFIERS or _is_bit(bench, thing):
        return "measure"
    if bench.words.nouns.get(bench.word(thing.head)) == "film":
        return "film"
    known = bench.term_kind[thing.head]
    if known:
        return known
    for word in (bench.word(thing.head), bench.doc[thing.head].lemma_.lower()):
        if word in bench.words.nouns:
            return bench.words.nouns[word]
    return "thing"


def _is_bit(bench: Bench, thing: Thing) -> bool:
    """ "a good bit", "a bit of play": an amount, not a drill's bit."""
    if bench.word(thing.head) != "bit":
        return False
    vague = all(word in _VAGUE for word in bench.lower[thing.start : thing.head])
    return vague and (bench.word(thing.start) != "the" or bench.word(thing.end) == "of")


def is_workable(bench: Bench, thing: Thing) -> bool:
    """False for people, hours and ideas."""
    return kind_of(bench, thing) not in {"people", "time", "abstract", "body", "measure", "film"}


def is_plural(bench: Bench, thing: Thing) -> bool:
    """True for a plural noun or pronoun."""
    return bench.word(thing.head) in {"them", "they", "these", "those", "both"} or bench.tag(thing.head) in {
        "NNS",
        "NNPS",
    }
