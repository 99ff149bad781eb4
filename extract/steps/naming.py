"""What a step is called: the speaker's verb with the bench's plain one, the thing with what it belongs to.

"tap out" is "tap out / remove"; "the screw of the needle bar" is "screw of needle bar"; "measure" stands alone.
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.terms import singular
from extract.clauses.things import Thing, kind_of, name_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.shapes.tools import tool_verb


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
