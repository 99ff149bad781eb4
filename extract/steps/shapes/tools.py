"""What a tool is for, and what a figure tells of the work."""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.things import Thing, name_of, thing_at


def tool_verb(bench: Bench, thing: Thing) -> str | None:
    """What a tool or material is for, by the longest name that ends on its head; null for an unknown one."""
    words = name_of(bench, thing).split()
    for start in range(len(words)):
        verb = bench.words.tool_verbs.get(" ".join(words[start:]))
        if verb and not (start == len(words) - 1 > 0 and words[start] in bench.words.compound_tools):
            return verb
    before = bench.word(thing.head - 1)
    compound = thing.head > thing.start and bench.tag(thing.head - 1) in {"NN", "NNS", "VBG"}
    if compound and before.endswith("ing") and (worked := bench.verb(thing.head - 1)) is not None:
        return worked.lemma if worked.lemma in bench.words.work else None
    if bench.word(thing.head) == "paper" and before.isdigit():
        return "sand"
    compound = compound and bench.words.nouns.get(before) != "measure"
    head = bench.doc[thing.head].lemma_.lower()
    if compound and (head in bench.words.compound_tools or bench.word(thing.head) in bench.words.compound_tools):
        return None
    return bench.words.tool_verbs.get(head)


def container_verb(bench: Bench, start: int, end: int) -> str | None:
    """The work that is done where a thing is put: "in the cleaner" cleans; null where the place tells nothing."""
    for at in range(start, min(end, start + 4)):
        if bench.word(at) in {"in", "into", "to", "under", "through"}:
            place = thing_at(bench, at + 1, end)
            if place is not None and not place.pronoun:
                names = (name_of(bench, place), bench.word(place.head))
                return next((bench.words.containers[name] for name in names if name in bench.words.containers), None)
    return None


def figure_verb(bench: Bench, start: int, end: int) -> str | None:
    """What a figure among the tokens tells of the work: "40 nm" is tightened; null where there is none."""
    for kind in sorted(bench.unit_kinds(start, end)):
        if kind in bench.words.kind_verbs:
            return bench.words.kind_verbs[kind]
    if not any(bench.tag(k) == "CD" for k in range(start, end)):
        return None
    said = " ".join(bench.lower[start:end])
    padded = f" {said} "
    return next((verb for unit, verb in bench.words.figure_verbs.items() if f" {unit} " in padded), None)
