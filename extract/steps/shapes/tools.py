"""What a tool is for, and what a figure tells of the work."""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.things import Thing, name_of


def tool_verb(bench: Bench, thing: Thing) -> str | None:
    """What a tool or material is for, by the longest name that ends on its head; null for an unknown one."""
    words = name_of(bench, thing).split()
    for start in range(len(words)):
        verb = bench.words.tool_verbs.get(" ".join(words[start:]))
        if verb:
            return verb
    return bench.words.tool_verbs.get(bench.doc[thing.head].lemma_.lower())


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
