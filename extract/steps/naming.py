"""What a step is called: the speaker's verb with the bench's plain one, the thing with what it belongs to.

"tap out" is "tap out / remove"; "the screw of the needle bar" is "screw of needle bar"; "measure" stands alone.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right

from extract.clauses.bench import Bench
from extract.clauses.terms import singular
from extract.clauses.things import Thing, kind_of, name_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.tools import tool_verb

_BESIDE = frozenset({"part", "material", "thing"})
_POINTED = frozenset({"the", "this", "that", "these", "those", "each", "both", "every", "all"})
_NOT_WORKED_ON = frozenset({"from", "by", "with", "through", "off", "at", "till", "until", "for", "like", "than"})
_NOUN_TAGS = frozenset({"NN", "NNS"})


def named_work(bench: Bench, candidate: Candidate) -> str:
    """The verb, and behind a stroke the plain name of the work where that is another."""
    verb = candidate.verb
    words = bench.words
    plain = words.means.get(verb) or words.means.get(verb.split()[0]) if verb not in words.means_with else None
    if candidate.meant is not None:
        head = singular(bench.word(candidate.meant.head))
        plain = words.means_with.get(f"{verb} {head}", plain)
        if plain in {None, "fit"} and words.kind(*verb.split(" ", 1)) == "light":
            plain = tool_verb(bench, candidate.meant) or plain
    return verb if plain is None or plain in verb.split() else f"{verb} / {plain}"


def name_with_whole(bench: Bench, candidate: Candidate) -> str:
    """The object's name with what it is part of: said behind "of", or spoken of before where it says little alone."""
    assert candidate.meant is not None  # noqa: S101
    name = name_of(bench, candidate.meant)
    if " of " in name or not name:
        return name
    whole = whole_of(bench, candidate.meant)
    if whole is not None:
        return f"{name} of {name_of(bench, whole)}"
    about = None if candidate.about is None else name_of(bench, candidate.about)
    if candidate.about is None or about is None or singular(about.split()[-1]) in singular(name).split():
        return name
    return f"{name} of {name_of(bench, candidate.about)}"


def whole_of(bench: Bench, thing: Thing) -> Thing | None:
    """What a thing is part of, where it is said behind "of": the needle bar of "the screw of the needle bar"."""
    if bench.word(thing.head + 1) != "of":
        return None
    whole = thing_at(bench, thing.head + 2, len(bench))
    return None if whole is None or whole.pronoun or kind_of(bench, whole) == "people" else whole


def named_beside(bench: Bench, start: int, end: int, verbs: frozenset[int]) -> list[str]:
    """Parts, materials and things named in the breaths of a step: what its work may be on where no object is said."""
    first = bisect_left(bench.cue, bench.cue[start])
    last = bisect_right(bench.cue, bench.cue[end - 1])
    names: list[str] = []
    at = first
    while at < last:
        thing = thing_at(bench, at, last)
        if thing is None:
            at += 1
            continue
        if thing.head not in verbs and _may_be_worked_on(bench, thing):
            names.append(name_of(bench, thing))
        at = thing.end
    return list(dict.fromkeys(names))


def _may_be_worked_on(bench: Bench, thing: Thing) -> bool:
    """ "the spindle" and "new pad", not "with a sigh", "in lanes", "plenty of time"."""
    kind = kind_of(bench, thing)
    if thing.pronoun or kind not in _BESIDE or bench.tag(thing.head) not in _NOUN_TAGS:
        return False
    if bench.word(thing.start - 1) in _NOT_WORKED_ON or bench.word(thing.head + 1) == "of":
        return False
    if kind in {"part", "material"}:
        return True
    pointed = bench.word(thing.start) in _POINTED or bench.tag(thing.start) == "PRP$" or thing.end - thing.start > 1
    placed = bench.tag(thing.start - 1) in {"IN", "TO"}
    return pointed if placed else bench.word(thing.start) not in {"a", "an", "no"} or thing.end - thing.start > 2
